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

type Reference = readonly [kind: keyof KnownIds, id: string | null | undefined];

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

function referencesOfSegment(segment: Segment): Reference[] {
  const line: Reference = ["line", segment.lineId];
  switch (segment.kind) {
    case "change":
      return [
        line,
        ["set-up", segment.fromSetupId],
        ["set-up", segment.toSetupId],
        ["team", segment.teamId],
        ["trolley", segment.trolleyId],
        ["mould", segment.mouldOut?.mouldId],
        ["mould", segment.mouldIn?.mouldId],
      ];
    case "run":
      return [
        line,
        ["order", segment.orderId],
        ["set-up", segment.setupId],
        ["mould", segment.mould?.mouldId],
      ];
    case "stop":
      return [line, ["order", segment.orderId]];
  }
}

/** Ids in the plan that the problem does not have, and indices of changes beyond its list. */
export function unknownReferences(problem: ProblemData, plan: Plan): Violation[] {
  const known = knownIds(problem);
  const faults: Violation[] = [];
  const check = (where: string, references: readonly Reference[]) => {
    for (const [kind, id] of references) {
      if (id === null || id === undefined || known[kind].has(id)) continue;
      faults.push(
        finding(
          "unknown-id",
          {},
          `The plan's ${where} names the ${kind} ${sayValue(id)}, which is not in the problem.`,
        ),
      );
    }
  };
  plan.segments.forEach((segment, index) => {
    check(`segments[${index}]`, referencesOfSegment(segment));
    if (segment.kind !== "change" || segment.changeSpec < problem.changes.length) return;
    const text = `The plan's segments[${index}] names change ${segment.changeSpec}; the problem has ${problem.changes.length}.`;
    faults.push(finding("unknown-id", { lineId: segment.lineId, at: segment.start }, text));
  });
  plan.lots.forEach((lot, index) =>
    check(`lots[${index}]`, [
      ["order", lot.orderId],
      ["line", lot.lineId],
      ["set-up", lot.setupId],
    ]),
  );
  plan.unplanned.forEach((entry, index) =>
    check(`unplanned[${index}]`, [
      ["order", entry.orderId],
      ...entry.reasons.map((reason): Reference => ["line", reason.lineId]),
    ]),
  );
  return faults;
}
