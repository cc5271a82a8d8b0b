import { BlockDamaged, type ByteReader, type ByteWriter } from './bytes.ts';

/**
 * A text as the JSON string that it is (any text survives that), less what it has in common with the start of the
 * text before it: probes of one device differ in their last letters only.
 */
export function writeText(out: ByteWriter, text: string, before: string): void {
  const bytes = jsonBytes(text);
  const earlier = jsonBytes(before);
  let shared = 0;
  while (shared < bytes.length && bytes[shared] === earlier[shared]) shared++;
  out.varint(shared);
  out.varint(bytes.length - shared);
  out.bytes(bytes.subarray(shared));
}

/** Reads what `writeText` wrote after `before`. Throws `BlockDamaged`. */
export function readText(source: ByteReader, before: string): string {
  const earlier = jsonBytes(before);
  const shared = source.varint();
  if (shared > earlier.length) throw new BlockDamaged('a text that starts with nothing');
  const rest = source.bytes(source.varint());
  try {
    const text: unknown = JSON.parse(
      new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat([earlier.subarray(0, shared), rest])),
    );
    if (typeof text === 'string') return text;
  } catch {
    // Neither UTF-8 nor JSON: the same as JSON that is no text.
  }
  throw new BlockDamaged('an unreadable text');
}

const jsonBytes = (text: string): Uint8Array => Buffer.from(JSON.stringify(text), 'utf8');
