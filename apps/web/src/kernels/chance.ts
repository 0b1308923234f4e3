/** A chance as people say it: so many times in so many, or as good as always or never. */
export type SaidChance =
  | { readonly kind: "sure" | "hardly" }
  | { readonly kind: "about"; readonly times: number; readonly of: 10 | 20 };

/** Rounded as far as a few hundred simulated days tell apart; what is not certain is never called certain. */
export function sayChance(chance: number): SaidChance {
  if (chance >= 0.985) return { kind: "sure" };
  if (chance < 0.05) return { kind: "hardly" };
  if (chance >= 0.925) return { kind: "about", times: 19, of: 20 };
  return { kind: "about", times: Math.max(1, Math.round(chance * 10)), of: 10 };
}
