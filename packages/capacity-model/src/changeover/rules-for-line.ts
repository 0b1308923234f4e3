import type { ChangeoverRules } from "../plant/changeover-rules.ts";
import type { LineId } from "../plant/scalars.ts";

/** Changeover rules that hold for a line: the set that names it, else the set for every line; null when neither is there. */
export function rulesForLine(sets: readonly ChangeoverRules[], lineId: LineId): ChangeoverRules | null {
  return (
    sets.find((rules) => rules.lineIds?.includes(lineId)) ??
    sets.find((rules) => rules.lineIds === null) ??
    null
  );
}

/** Class of a mould by its mass: the first whose bound holds it, else the last. */
export function mouldClassFor(
  rules: ChangeoverRules,
  massKg: number,
): ChangeoverRules["mouldClasses"][number] {
  const last = rules.mouldClasses.length - 1;
  const index = rules.mouldClasses.findIndex(({ upToMassKg }) => upToMassKg === null || massKg <= upToMassKg);
  return rules.mouldClasses[index < 0 ? last : index] as ChangeoverRules["mouldClasses"][number];
}
