import { describe, expect, it } from 'vitest';
import { newId, uuidv7 } from '../../daemon/ids.ts';

describe('UUIDv7', () => {
  it('is built as the example of RFC 9562, appendix A.6', () => {
    // RFC 9562, A.6: unix_ts_ms 0x017F22E279B0, rand_a 0xCC3, rand_b 0b01 then 0x8C4DC0C0C07398F.
    // The version and variant bits of the random bytes are set wrong here, to see them put right.
    const random = Uint8Array.from([0xfc, 0xc3, 0x58, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuidv7(0x017f22e279b0, random)).toBe('017f22e2-79b0-7cc3-98c4-dc0c0c07398f');
    // The same time in words: Tuesday, February 22, 2022 2:22:22.00 PM GMT-05:00.
    expect(new Date(0x017f22e279b0).toISOString()).toBe('2022-02-22T19:22:22.000Z');
  });

  it('refuses what does not fit', () => {
    expect(() => uuidv7(-1, new Uint8Array(10))).toThrow(RangeError);
    expect(() => uuidv7(2 ** 48, new Uint8Array(10))).toThrow(RangeError);
    expect(() => uuidv7(0, new Uint8Array(9))).toThrow(RangeError);
  });

  it('sorts by time, and two of one moment differ', () => {
    const high = new Uint8Array(10).fill(255);
    expect(uuidv7(1_700_000_000_000, high) < uuidv7(1_700_000_000_001, new Uint8Array(10))).toBe(true);
    const first = newId();
    expect(first).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(newId()).not.toBe(first);
  });
});
