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

/** Says where in the plan an id stands; asked only of one that is unknown. */
type Place = () => string;
type Check = (kind: keyof KnownIds, id: string | null | undefined) => void;

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

function checkSegment(segment: Segment, check: Check): void {
  check("line", segment.lineId);
  switch (segment.kind) {
    case "change":
      check("set-up", segment.fromSetupId);
      check("set-up", segment.toSetupId);
      check("team", segment.teamId);
      check("trolley", segment.trolleyId);
      check("mould", segment.mouldOut?.mouldId);
      check("mould", segment.mouldIn?.mouldId);
      return;
    case "run":
      check("order", segment.orderId);
      check("set-up", segment.setupId);
      check("mould", segment.mould?.mouldId);
      return;
    case "stop":
      check("order", segment.orderId);
  }
}

/** Ids in the plan that the problem does not have, and indices of changes beyond its list. */
export function unknownReferences(problem: ProblemData, plan: Plan): Violation[] {
  const known = knownIds(problem);
  const faults: Violation[] = [];
  const checkAt =
    (where: Place): Check =>
    (kind, id) => {
      if (id === null || id === undefined || known[kind].has(id)) return;
      const text = `The plan's ${where()} names the ${kind} ${sayValue(id)}, which is not in the problem.`;
      faults.push(finding("unknown-id", {}, text));
    };
  plan.segments.forEach((segment, index) => {
    const where = (): string => `segments[${index}]`;
    checkSegment(segment, checkAt(where));
    if (segment.kind !== "change" || segment.changeSpec < problem.changes.length) return;
    const text = `The plan's ${where()} names change ${segment.changeSpec}; the problem has ${problem.changes.length}.`;
    faults.push(finding("unknown-id", { lineId: segment.lineId, at: segment.start }, text));
  });
  plan.lots.forEach((lot, index) => {
    const check = checkAt(() => `lots[${index}]`);
    check("order", lot.orderId);
    check("line", lot.lineId);
    check("set-up", lot.setupId);
  });
  plan.unplanned.forEach((entry, index) => {
    const check = checkAt(() => `unplanned[${index}]`);
    check("order", entry.orderId);
    for (const reason of entry.reasons) check("line", reason.lineId);
  });
  return faults;
}
