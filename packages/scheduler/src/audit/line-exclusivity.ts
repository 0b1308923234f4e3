import type { Segment } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

function orderOf(segment: Segment): string | null {
  return segment.kind === "change" ? null : segment.orderId;
}

/** Rule 1: on every line one thing at a time, none of it before the line is free. */
export function lineExclusivity(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const line of context.problem.lines) {
    let busyUntil = line.freeAt;
    let earlier: Segment | null = null;
    for (const segment of context.segmentsOfLine.get(line.id) ?? []) {
      const subject = { lineId: line.id, orderId: orderOf(segment), at: segment.start };
      if (segment.start < busyUntil) {
        const by = sayDuration(busyUntil - segment.start);
        const start = sayInstant(context.problem, segment.start);
        found.push(
          earlier === null
            ? finding(
                "line-not-free",
                subject,
                `Line ${line.id} starts a ${segment.kind} ${start}, ${by} before it is free.`,
              )
            : finding(
                "line-overlap",
                subject,
                `Line ${line.id} starts a ${segment.kind} ${start}, ${by} before the ${earlier.kind} before it ends.`,
              ),
        );
      }
      if (segment.end > busyUntil || earlier === null) {
        busyUntil = Math.max(busyUntil, segment.end);
        earlier = segment;
      }
    }
  }
  return found;
}

/** Segments are listed by line in the problem's order, then by start. */
export function segmentOrder(context: AuditContext): Violation[] {
  const rank = new Map(context.problem.lines.map((line, index) => [line.id, index]));
  const found: Violation[] = [];
  context.plan.segments.forEach((segment, index, all) => {
    const earlier = all[index - 1];
    if (earlier === undefined) return;
    const step = (rank.get(segment.lineId) ?? 0) - (rank.get(earlier.lineId) ?? 0);
    if (step > 0 || (step === 0 && segment.start >= earlier.start)) return;
    const text = `Segment ${index} of the plan (line ${segment.lineId}) is listed after segment ${index - 1} (line ${earlier.lineId}) but belongs before it.`;
    found.push(finding("wrong-order-of-segments", { lineId: segment.lineId, at: segment.start }, text));
  });
  return found;
}
