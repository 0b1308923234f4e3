/** The clock of this machine, seconds since the epoch. */
export function nowSeconds(): number {
  return Math.floor(Date.now() / 1000);
}
