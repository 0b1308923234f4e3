import type { ChangeSegment } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditCode } from "./audit-code.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { sayDuration, sayInstant } from "./wording.ts";

type Server = "team" | "trolley";

const codeOf: Readonly<Record<Server, AuditCode>> = {
  team: "team-double-booked",
  trolley: "trolley-double-booked",
};

function doubleBookings(context: AuditContext, server: Server): Violation[] {
  const busy = new Map<string, ChangeSegment>();
  const changes = context.plan.segments
    .filter((segment) => segment.kind === "change")
    .filter((change) => change.tailStart > change.start)
    .sort((a, b) => a.start - b.start);
  const found: Violation[] = [];
  for (const change of changes) {
    const id = server === "team" ? change.teamId : change.trolleyId;
    if (id === null) continue;
    const earlier = busy.get(id);
    if (earlier !== undefined && change.start < earlier.tailStart) {
      const text = `The ${server} ${id} is needed on line ${change.lineId} ${sayInstant(context.problem, change.start)}, but is busy on line ${earlier.lineId} for another ${sayDuration(earlier.tailStart - change.start)}.`;
      found.push(finding(codeOf[server], { lineId: change.lineId, at: change.start }, text));
    }
    if (earlier === undefined || change.tailStart > earlier.tailStart) busy.set(id, change);
  }
  return found;
}

/** Rule 3: a team and a trolley serve one change at a time, from its start to the end of mounting. */
export function changeCrews(context: AuditContext): Violation[] {
  return [...doubleBookings(context, "team"), ...doubleBookings(context, "trolley")];
}
