import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { sayHeads, sayInstant } from "./wording.ts";

/** Rule 7: at every instant the running lines of a pool need no more operators than are there. One finding a shortage. */
export function operators(context: AuditContext): Violation[] {
  return context.problem.pools.flatMap((pool) => {
    const found: Violation[] = [];
    let worst = 0;
    let since = 0;
    for (const { from, spare } of context.spareOfPool.get(pool.id) ?? []) {
      if (spare < 0 && worst === 0) since = from;
      if (spare >= 0 && worst < 0) {
        const text = `From ${sayInstant(context.problem, since)} to ${sayInstant(context.problem, from)} the running lines need up to ${sayHeads(-worst)} more operators than pool ${pool.id} has.`;
        found.push(finding("operators-short", { at: since }, text));
      }
      worst = spare < 0 ? Math.min(worst, spare) : 0;
    }
    return found;
  });
}
