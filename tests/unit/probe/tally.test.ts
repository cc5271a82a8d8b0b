import { describe, expect, it } from 'vitest';
import { withChecksum } from '../../../daemon/probe/wire/checksum.ts';
import { parseLine } from '../../../daemon/probe/wire/line.ts';
import { LineTally, printable } from '../../../daemon/probe/wire/tally.ts';

function good(line: string) {
  const parsed = parseLine(line, 'dev');
  if (parsed.kind === 'rejected') throw new Error(`${line}: ${parsed.cause}`);
  return parsed;
}

/** Samples missed after lines with these sequence numbers. */
function missed(...seqs: readonly (number | 'hello' | 'reconnect')[]): number {
  const tally = new LineTally();
  for (const seq of seqs) {
    if (seq === 'reconnect') tally.newConnection();
    else tally.accept(good(seq === 'hello' ? 'id=x' : `t=1 n=${seq}`));
  }
  return tally.counts().samplesMissed;
}

describe('samples missed', () => {
  it('are the gaps of the sequence number', () => {
    expect(missed(1, 2, 3)).toBe(0);
    expect(missed(1, 3, 7)).toBe(1 + 3);
    expect(missed(7)).toBe(0);
  });

  it('are counted over the wrap at 65536', () => {
    expect(missed(65_535, 0)).toBe(0);
    expect(missed(65_534, 1)).toBe(2);
  });

  it('are none for a repeat, a step back, or a board that began anew', () => {
    expect(missed(5, 5)).toBe(0);
    expect(missed(5, 4, 5)).toBe(0);
    expect(missed(40_000, 0, 1)).toBe(0);
    expect(missed(65_000, 'hello', 0)).toBe(0);
    expect(missed(65_000, 'reconnect', 0)).toBe(0);
  });

  it('are counted up to a jump of a thousand', () => {
    expect(missed(1, 1002)).toBe(1000);
    expect(missed(1, 1003)).toBe(0);
  });

  it('are counted for each probe by itself', () => {
    const tally = new LineTally();
    for (const line of ['p=a t=1 n=1', 'p=b t=1 n=500', 'p=a t=1 n=2', 'p=b t=1 n=502'])
      tally.accept(good(line));
    expect(tally.counts().samplesMissed).toBe(1);
  });
});

describe('what a device has bound itself to', () => {
  it('is its checksum: later lines without one, or with a weaker one, are objected to', () => {
    const tally = new LineTally();
    const [none, xor, crc] = [good('t=1'), good(withChecksum('t=1')), good(withChecksum('t=1', 'crc'))];
    expect(tally.counts().checksummed).toBe(false);
    expect([none, xor, crc].map((line) => tally.objection(line))).toEqual([null, null, null]);
    tally.accept(none);
    expect(tally.counts().checksummed).toBe(false);
    tally.accept(xor);
    expect(tally.counts().checksummed).toBe(true);
    expect([none, xor, crc].map((line) => tally.objection(line))).toEqual(['checksum', null, null]);
    tally.accept(crc);
    tally.newConnection();
    expect([none, xor, crc].map((line) => tally.objection(line))).toEqual(['checksum', 'checksum', null]);
  });

  it('is its pairs: a number alone may then be the rest of a line', () => {
    const tally = new LineTally();
    tally.accept(good('20'));
    tally.accept(good('id=x'));
    expect(tally.objection(good('20'))).toBeNull();
    tally.accept(good('t=20'));
    expect(tally.objection(good('20'))).toBe('malformed');
  });
});

describe('counts', () => {
  it('keep the last line of each cause, made printable', () => {
    const tally = new LineTally();
    tally.reject('checksum', 'a');
    tally.reject('checksum', 'b\u0007');
    tally.reject('too-long', 'x'.repeat(300));
    tally.seen('\u00ff');
    expect(tally.counts()).toEqual({
      hello: null,
      linesAccepted: 0,
      samplesMissed: 0,
      checksummed: false,
      lastLine: '\\xff',
      rejected: [
        { cause: 'checksum', count: 2, lastRaw: 'b\\x07' },
        { cause: 'too-long', count: 1, lastRaw: 'x'.repeat(256) },
      ],
    });
  });

  it('never show more than 256 characters', () => {
    expect(printable('\u0000'.repeat(256))).toHaveLength(256);
  });
});
