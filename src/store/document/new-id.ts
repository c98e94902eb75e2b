/** A new instrument's id: 128 random bits in hex. (`randomUUID` is not there on a page served without TLS.) */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
