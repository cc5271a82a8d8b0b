/** The two checksums that a line may end in. Both are computed over all characters before the `*`. */

/** XOR of all characters, 0..255: the checksum of NMEA 0183, without that standard's `$`. */
export function xor8(text: string): number {
  let sum = 0;
  for (let i = 0; i < text.length; i += 1) sum ^= text.charCodeAt(i);
  return sum & 0xff;
}

/**
 * CRC-16/CCITT-FALSE (also called CRC-16/IBM-3740): polynomial 0x1021, start 0xFFFF, not reflected, no final XOR.
 * Its check value, over "123456789", is 0x29B1.
 */
export function crc16(text: string): number {
  let crc = 0xffff;
  for (let i = 0; i < text.length; i += 1) {
    crc ^= (text.charCodeAt(i) & 0xff) << 8;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1;
    crc &= 0xffff;
  }
  return crc;
}

/** How well a line is guarded against damage, the weakest first. */
export const checkKinds = ['none', 'xor', 'crc'] as const;
export type CheckKind = (typeof checkKinds)[number];

export interface Checked {
  /** What the checksum guards; the whole line where there is none. */
  readonly payload: string;
  readonly check: CheckKind;
}

const ending = /^([^*]*)\*([0-9A-Fa-f]{2}|[0-9A-Fa-f]{4})$/;

/** Takes a line's checksum off; null where it has one that is damaged or does not match. */
export function splitChecksum(line: string): Checked | null {
  if (!line.includes('*')) return { payload: line, check: 'none' };
  const [, payload, hex] = ending.exec(line) ?? [];
  if (payload === undefined || hex === undefined) return null;
  const check = hex.length === 2 ? 'xor' : 'crc';
  const sum = check === 'xor' ? xor8(payload) : crc16(payload);
  return sum === Number.parseInt(hex, 16) ? { payload, check } : null;
}

/** The line with its checksum behind it, as a device would send it (without line end). */
export function withChecksum(payload: string, check: CheckKind = 'xor'): string {
  if (check === 'none') return payload;
  const [sum, digits] = check === 'xor' ? [xor8(payload), 2] : [crc16(payload), 4];
  return `${payload}*${sum.toString(16).toUpperCase().padStart(digits, '0')}`;
}
