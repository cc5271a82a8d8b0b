/** Bytes that do not say what their format promises: cut short, garbled, or written by something else. */
export class BlockDamaged extends Error {
  constructor(what: string) {
    super(`sample block: ${what}`);
    this.name = 'BlockDamaged';
  }
}

/** Seven bits a byte; 2^53 takes eight. */
const VARINT_BYTES_AT_MOST = 8;

/** Collects bytes from first to last. */
export class ByteWriter {
  #bytes = new Uint8Array(256);
  #length = 0;

  byte(value: number): void {
    this.#reserve(1);
    this.#bytes[this.#length++] = value;
  }

  /** A whole number from 0 to 2^53 - 1: seven bits a byte, the lowest first, the top bit set on all but the last. */
  varint(value: number): void {
    let rest = value;
    while (rest >= 0x80) {
      this.byte((rest % 0x80) + 0x80);
      rest = Math.floor(rest / 0x80);
    }
    this.byte(rest);
  }

  /** A whole number of either sign, at most 2^52 in size: 0, -1, 1, -2 … become 0, 1, 2, 3 …. */
  signed(value: number): void {
    this.varint(zigzag(value));
  }

  /** IEEE 754 double, least significant byte first. */
  float64(value: number): void {
    this.#reserve(8);
    new DataView(this.#bytes.buffer).setFloat64(this.#length, value, true);
    this.#length += 8;
  }

  bytes(value: Uint8Array): void {
    this.#reserve(value.length);
    this.#bytes.set(value, this.#length);
    this.#length += value.length;
  }

  done(): Uint8Array {
    return this.#bytes.slice(0, this.#length);
  }

  #reserve(more: number): void {
    if (this.#length + more <= this.#bytes.length) return;
    const grown = new Uint8Array(Math.max(this.#bytes.length * 2, this.#length + more));
    grown.set(this.#bytes);
    this.#bytes = grown;
  }
}

/** Reads what `ByteWriter` wrote; throws `BlockDamaged` at the first thing that it cannot have written. */
export class ByteReader {
  readonly #view: DataView;
  readonly #source: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#source = bytes;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  get left(): number {
    return this.#source.length - this.#at;
  }

  byte(): number {
    return this.#view.getUint8(this.#advance(1));
  }

  varint(): number {
    let value = 0;
    let scale = 1;
    for (let i = 0; i < VARINT_BYTES_AT_MOST; i++) {
      const byte = this.byte();
      value += (byte & 0x7f) * scale;
      if (byte < 0x80) return whole(value);
      scale *= 0x80;
    }
    throw new BlockDamaged('a number is too long');
  }

  signed(): number {
    const value = this.varint();
    return value % 2 === 0 ? value / 2 : -(value + 1) / 2;
  }

  float64(): number {
    return this.#view.getFloat64(this.#advance(8), true);
  }

  bytes(length: number): Uint8Array {
    const from = this.#advance(length);
    return this.#source.subarray(from, from + length);
  }

  #advance(by: number): number {
    if (by > this.left) throw new BlockDamaged('it ends too early');
    const from = this.#at;
    this.#at += by;
    return from;
  }
}

/** How many bytes `ByteWriter.signed` takes for a value. */
export function signedLength(value: number): number {
  let bytes = 1;
  for (let rest = zigzag(value); rest >= 0x80; rest = Math.floor(rest / 0x80)) bytes++;
  return bytes;
}

const zigzag = (value: number): number => (value < 0 ? -2 * value - 1 : 2 * value);

function whole(value: number): number {
  if (!Number.isSafeInteger(value)) throw new BlockDamaged('a number is too large');
  return value;
}
