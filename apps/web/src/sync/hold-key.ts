/** A key that nobody else has: 128 random bits as hex digits. Works over plain HTTP too, where UUIDs are not given out. */
export function newHoldKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
}
