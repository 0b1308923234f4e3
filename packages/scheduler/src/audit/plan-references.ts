import type { Plan, Segment } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import { finding } from "./finding.ts";
import { sayValue } from "./wording.ts";

/** The ids that the problem knows, by what they name. */
interface KnownIds {
  readonly line: ReadonlySet<string>;
  readonly order: ReadonlySet<string>;
  readonly "set-up": ReadonlySet<string>;
  readonly mould: ReadonlySet<string>;
  readonly team: ReadonlySet<string>;
  readonly trolley: ReadonlySet<string>;
}

function knownIds(problem: ProblemData): KnownIds {
  return {
    line: new Set(problem.lines.map((line) => line.id)),
    order: new Set(problem.jobs.map((job) => job.orderId)),
    "set-up": new Set(problem.setups.map((setup) => setup.id)),
    mould: new Set(problem.moulds.map((mould) => mould.id)),
    team: new Set(problem.teams.map((team) => team.id)),
    trolley: new Set(problem.trolleys.map((trolley) => trolley.id)),
  };
}

/** Looks ids of a plan up, and notes those that are unknown. */
class IdCheck {
  readonly faults: Violation[] = [];
  private readonly known: KnownIds;

  constructor(problem: ProblemData) {
    this.known = knownIds(problem);
  }

  /** An id that stands in an entry of one of the plan's lists; none is no fault. */
  check(kind: keyof KnownIds, id: string | null | undefined, list: keyof Plan, index: number): void {
    if (id === null || id === undefined || this.known[kind].has(id)) return;
    const text = `The plan's ${list}[${index}] names the ${kind} ${sayValue(id)}, which is not in the problem.`;
    this.faults.push(finding("unknown-id", {}, text));
  }
}

function checkSegment(ids: IdCheck, segment: Segment, index: number): void {
  ids.check("line", segment.lineId, "segments", index);
  if (segment.kind !== "change") ids.check("order", segment.orderId, "segments", index);
  if (segment.kind === "run") {
    ids.check("set-up", segment.setupId, "segments", index);
    ids.check("mould", segment.mould?.mouldId, "segments", index);
  }
  if (segment.kind === "change") {
    ids.check("set-up", segment.fromSetupId, "segments", index);
    ids.check("set-up", segment.toSetupId, "segments", index);
    ids.check("team", segment.teamId, "segments", index);
    ids.check("trolley", segment.trolleyId, "segments", index);
    ids.check("mould", segment.mouldOut?.mouldId, "segments", index);
    ids.check("mould", segment.mouldIn?.mouldId, "segments", index);
  }
}

/** Ids in the plan that the problem does not have, and indices of changes beyond its list. */
export function unknownReferences(problem: ProblemData, plan: Plan): Violation[] {
  const ids = new IdCheck(problem);
  for (const [index, segment] of plan.segments.entries()) {
    checkSegment(ids, segment, index);
    if (segment.kind !== "change" || segment.changeSpec < problem.changes.length) continue;
    const text = `The plan's segments[${index}] names change ${segment.changeSpec}; the problem has ${problem.changes.length}.`;
    ids.faults.push(finding("unknown-id", { lineId: segment.lineId, at: segment.start }, text));
  }
  for (const [index, lot] of plan.lots.entries()) {
    ids.check("order", lot.orderId, "lots", index);
    ids.check("line", lot.lineId, "lots", index);
    ids.check("set-up", lot.setupId, "lots", index);
  }
  for (const [index, entry] of plan.unplanned.entries()) {
    ids.check("order", entry.orderId, "unplanned", index);
    for (const reason of entry.reasons) ids.check("line", reason.lineId, "unplanned", index);
  }
  return ids.faults;
}
