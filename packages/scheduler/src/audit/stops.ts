import { workingBetween } from "@formweek/capacity-model";
import type { StopSegment } from "../plan/plan.ts";
import type { ProblemLine } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { mostSpare, type SpareHeads } from "./operator-profile.ts";
import { sayDuration, sayHeads, sayInstant } from "./wording.ts";

/** What speaks against the reason that a stop gives, or null; services are judged by the cycles of their mould. */
function objection(line: ProblemLine, stop: StopSegment, heads: readonly SpareHeads[] | null): string | null {
  const length = stop.end - stop.start;
  const open = workingBetween(line.workingTime, stop.start, stop.end);
  if (length === 0) return "it has no length";
  if (stop.reason === "service") return null;
  if (stop.reason === "closed") return open === 0 ? null : `the line is open for ${sayDuration(open)} of it`;
  if (open < length) return `the line is closed for ${sayDuration(length - open)} of it`;
  if (stop.reason === "warm-up") return null;
  if (heads === null || line.operatorsHundredths === 0) return "the line needs no operators";
  const spare = mostSpare(heads, stop.start, stop.end);
  if (spare < line.operatorsHundredths) return null;
  return `the line needs ${sayHeads(line.operatorsHundredths)} operators and ${sayHeads(spare)} are free in it`;
}

/** Rule 4: a run pauses only for a true reason, all of the time. */
export function stops(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const stop of context.plan.segments) {
    if (stop.kind !== "stop") continue;
    const line = context.lines.get(stop.lineId);
    if (line === undefined) continue;
    const against = objection(line, stop, context.spareOfPool.get(line.poolId ?? "") ?? null);
    if (against === null) continue;
    const text = `Line ${line.id} stops order ${stop.orderId} (${stop.reason}) for ${sayDuration(stop.end - stop.start)} ${sayInstant(context.problem, stop.start)}, but ${against}.`;
    found.push(finding("untrue-stop", { lineId: line.id, orderId: stop.orderId, at: stop.start }, text));
  }
  return found;
}
