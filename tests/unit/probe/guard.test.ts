import { describe, expect, it } from 'vitest';
import { LineGuard } from '../../../daemon/probe/wire/guard.ts';

/** What comes out of a guard of ten bytes a line when these chunks go in. */
function through(...chunks: readonly string[]): string {
  const guard = new LineGuard(10);
  let out = '';
  for (const chunk of chunks) {
    guard.write(Buffer.from(chunk, 'latin1'));
    out += (guard.read() as Buffer | null)?.toString('latin1') ?? '';
  }
  return out;
}

describe('the guard', () => {
  it('lets lines through as they come', () => {
    expect(through('short\n0123456789\n', 'left')).toBe('short\n0123456789\nleft');
  });

  it('cuts a line that is too long and goes on at the next newline', () => {
    expect(through('a\n0123456789abc\nnext\n')).toBe('a\n0123456789\nnext\n');
  });

  it('cuts it wherever the chunks fall', () => {
    const text = 'a\n0123456789abcdefghij\nnext\n\n0123456789\n0123456789x\nlast';
    const expected = 'a\n0123456789\nnext\n\n0123456789\n0123456789\nlast';
    for (let size = 1; size <= text.length; size += 1) {
      const chunks = text.match(new RegExp(`[^]{1,${size}}`, 'g')) ?? [];
      expect(through(...chunks)).toBe(expected);
    }
  });

  it('keeps nothing of a long run without a newline', () => {
    const guard = new LineGuard(258);
    const run = Buffer.alloc(65_536, 0x78);
    let passed = 0;
    for (let i = 0; i < 256; i += 1) {
      guard.write(run);
      passed += (guard.read() as Buffer | null)?.length ?? 0;
    }
    expect(passed).toBe(258);
    expect(guard.readableLength + guard.writableLength).toBe(0);
  });
});
