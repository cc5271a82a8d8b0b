/** An id of 128 random bits, hex. `randomUUID` exists on HTTPS and localhost only; this works on any address. */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
