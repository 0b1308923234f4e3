/** What properties draw from that name no seed of their own: always the same, so that no change is ever stopped by chance. */
const FIXED_SEED = 20_261_127;

/** The environment variable that asks for another one. */
export const SEED_VARIABLE = "PROPERTY_SEED";

/** The seed of a run: the fixed one where nothing is asked for, any other for "random", else the whole number that is asked for. */
export function propertySeed(wish: string | undefined): number {
  if (wish === undefined || wish === "") return FIXED_SEED;
  if (wish === "random") return Math.floor(Math.random() * 2 ** 31);
  const seed = Number(wish);
  if (Number.isInteger(seed) && Math.abs(seed) < 2 ** 31) return seed;
  throw new Error(`${SEED_VARIABLE}: "${wish}" is neither "random" nor a whole number of 32 bits.`);
}
