import type { ProblemFault } from "../result.ts";

/** One fault. */
export function fault(code: string, subject: string, text: string, remedy: string): ProblemFault {
  return { code, subject, text, remedy };
}

/** Faults of ids that are used twice. */
export function duplicateFaults(kind: string, ids: readonly string[]): ProblemFault[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) twice.add(id);
    seen.add(id);
  }
  return [...twice].map((id) =>
    fault(`duplicate-${kind}`, id, `The ${kind} ${id} is given more than once.`, "Give each its own id."),
  );
}

/** True for whole seconds in 0 … 10^9. */
export function isDuration(seconds: number): boolean {
  return Number.isInteger(seconds) && seconds >= 0 && seconds <= 1_000_000_000;
}

/** True for a number that is finite and not negative. */
export function isAmount(value: number): boolean {
  return Number.isFinite(value) && value >= 0;
}
