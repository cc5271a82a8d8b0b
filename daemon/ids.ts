import { randomBytes } from 'node:crypto';

/** A new UUIDv7, made at the daemon's door: ids of later milliseconds sort after those of earlier ones. */
export const newId = (): string => uuidv7(Date.now(), randomBytes(10));

/**
 * A UUIDv7 of RFC 9562, section 5.7: 48 bits of Unix time, the version, 12 random bits, the variant, 62 random bits.
 * `unixMs`: whole milliseconds since 1970, below 2^48. `random`: 10 bytes, of which 74 bits are used.
 */
export function uuidv7(unixMs: number, random: Uint8Array): string {
  if (!Number.isInteger(unixMs) || unixMs < 0 || unixMs >= 2 ** 48)
    throw new RangeError(`a UUIDv7 takes whole milliseconds from 0 to 2^48 - 1, not ${unixMs}`);
  if (random.length !== 10) throw new RangeError(`a UUIDv7 takes 10 random bytes, not ${random.length}`);
  const bytes = Buffer.alloc(16);
  bytes.writeUIntBE(unixMs, 0, 6);
  bytes.set(random, 6);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x70, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}
