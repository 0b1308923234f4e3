import { workingTimeOf } from "@formweek/capacity-model";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  applyEdits,
  auditPlan,
  candidateEdits,
  rankRemedies,
  solve,
  validateProblem,
  type Plan,
  type ProblemData,
  type ProblemEdit,
  type Remedy,
} from "../index.ts";

const params = { seed: 2, maxSteps: 400, maxMs: null };

function planOf(problem: ProblemData, startFrom?: Plan): Plan {
  const from = startFrom === undefined ? {} : { startFrom };
  const result = solve(problem, { ...params, ...from }, stillEnv());
  expect(result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

/** What the application does with its solver: every candidate solved from the plan on. */
function remedies(
  problem: ProblemData,
  orderId: string,
  offers: readonly ProblemEdit[] = [],
): readonly Remedy[] {
  const plan = planOf(problem);
  const tried = [...offers, ...candidateEdits(problem, plan, orderId)].flatMap((edit) => {
    const edited = applyEdits(problem, [edit]);
    return edited.ok ? [{ edit, problem: edited.problem, plan: planOf(edited.problem, plan) }] : [];
  });
  return rankRemedies(problem, planOf(problem, plan), orderId, tried);
}

/** A team each, so that no change waits for setters. */
const twoTeams = ["a", "b"].map((id) => ({ id, workingTime: workingTimeOf([[0, 10 * DAY]]) }));

describe("remedies for a late order", () => {
  it("offer a second copy of the mould that it waits for, and say how much sooner it is", () => {
    const problem = twoMouldPlant({
      teams: twoTeams,
      jobs: [
        jobOf("first", "1", "A", { pieces: 10 * 3600, weight: 100, dueAt: 13 * HOUR }),
        jobOf("second", "2", "A", { dueAt: HOUR }),
      ],
    });
    const [best] = remedies(problem, "second");
    expect(best?.edit).toEqual({ kind: "mould copy", mouldId: "A" });
    // 2 h of mounting, 1 h of tail, 1 h of running instead of waiting for the first order
    expect(best?.after.finishAt).toBe(4 * HOUR);
    expect(best?.before.finishAt).toBeGreaterThan(14 * HOUR);
    expect(best?.saves).toBeCloseTo(best!.before.total - best!.after.total, 9);
  });

  it("offer a second team where two changes want the one there is", () => {
    const problem = twoMouldPlant({
      jobs: [
        jobOf("first", "1", "A", { weight: 100, dueAt: 4 * HOUR }),
        jobOf("second", "2", "B", { dueAt: HOUR }),
      ],
    });
    const [best] = remedies(problem, "second");
    expect(best?.edit).toMatchObject({ kind: "extra team" });
    expect(best?.after.finishAt).toBe(4 * HOUR);
  });

  it("offer a shift in the hours in which its line is closed", () => {
    const workingTime = workingTimeOf([
      [0, 6 * HOUR],
      [20 * HOUR, 10 * DAY],
    ]);
    const problem = twoMouldPlant({
      lines: [lineOf("1", { workingTime })],
      jobs: [jobOf("only", "1", "A", { pieces: 5 * 3600, dueAt: 6 * HOUR })],
    });
    const [best] = remedies(problem, "only");
    expect(best?.edit).toEqual({ kind: "extra shift", lineId: "1", from: 6 * HOUR, to: 14 * HOUR });
    expect(best?.after.finishAt).toBe(8 * HOUR);
  });

  it("offer two lots of a long run that two lines may make, and not of one that is pinned or may be split", () => {
    const job = jobOf("long", "1", "A", {
      pieces: 10 * HOUR,
      dueAt: 9 * HOUR,
      options: [
        { lineId: "1", setupId: "A", secondsPerPiece: 1 },
        { lineId: "2", setupId: "B", secondsPerPiece: 1 },
      ],
    });
    const problem = twoMouldPlant({ teams: twoTeams, jobs: [job] });
    const [best] = remedies(problem, "long");
    const edit = { kind: "lots", orderId: "long", most: 2, leastPieces: 2 * HOUR, unitPieces: 1 };
    expect(best?.edit).toEqual(edit);
    expect(best?.plan.lots).toHaveLength(2);
    // 3 h of change, and 5 h of running instead of 10 h if the lots are equal
    expect(best?.before.finishAt).toBe(13 * HOUR);
    expect(best?.after.finishAt).toBeLessThanOrEqual(9 * HOUR);
    const pins = [{ orderId: "long", lineId: "1", startAt: null, sequence: 0 }];
    for (const other of [
      { ...problem, pins },
      { ...problem, jobs: [{ ...job, lots: { most: 2, leastPieces: 5 * HOUR + 1, unitPieces: 1 } }] },
      { ...problem, jobs: [{ ...job, options: job.options.slice(0, 1) }] },
    ]) {
      const kinds = candidateEdits(other, planOf(other), "long").map(({ kind }) => kind);
      expect(kinds).not.toContain("lots");
    }
  });

  it("keep lots to whole units and the least run, and offer none where the order is too small for two", () => {
    const problemWith = (leastPieces: number, unitPieces: number): ProblemData => {
      const options = ["1", "2"].map((lineId, i) => ({ lineId, setupId: "AB"[i]!, secondsPerPiece: 1 }));
      const lotSize = { leastPieces, unitPieces };
      const job = jobOf("long", "1", "A", { pieces: 10 * HOUR, dueAt: 9 * HOUR, options, lotSize });
      return twoMouldPlant({ teams: twoTeams, jobs: [job] });
    };
    const lotsOf = (problem: ProblemData) =>
      remedies(problem, "long").filter(({ edit }) => edit.kind === "lots");
    const [packed] = lotsOf(problemWith(3 * HOUR, 1700));
    expect(packed?.edit).toMatchObject({ kind: "lots", leastPieces: 3 * HOUR, unitPieces: 1700 });
    const pieces = packed?.plan.lots.map((lot) => lot.pieces) ?? [];
    expect(pieces).toHaveLength(2);
    expect(pieces.filter((each) => each % 1700 !== 0).length).toBeLessThanOrEqual(1);
    expect(Math.min(...pieces)).toBeGreaterThanOrEqual(3 * HOUR);
    expect(lotsOf(problemWith(6 * HOUR, 1))).toEqual([]);
    // one lot of whole units would leave the other less than the least run
    expect(lotsOf(problemWith(4 * HOUR, 7 * HOUR))).toEqual([]);
  });

  it("try what the caller offers, such as a line that could be approved", () => {
    const problem = twoMouldPlant({
      teams: twoTeams,
      jobs: [
        jobOf("first", "1", "A", { pieces: 10 * 3600, weight: 100, dueAt: 13 * HOUR }),
        jobOf("second", "1", "B", { dueAt: HOUR }),
      ],
    });
    const option = { lineId: "2", setupId: "B", secondsPerPiece: 1 };
    const [best] = remedies(problem, "second", [{ kind: "another line", orderId: "second", option }]);
    expect(best?.edit).toEqual({ kind: "another line", orderId: "second", option });
    expect(best?.after.finishAt).toBe(4 * HOUR);
  });

  it("are none for an order that nothing holds, and for one that the plan does not make", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("o", "1", "A")] });
    expect(remedies(problem, "o")).toEqual([]);
    expect(remedies(problem, "other")).toEqual([]);
  });

  it("are sound plans of the changed problem, the cheapest first, in every random plant", () => {
    let found = 0;
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const late = planOf(problem).lots.find(
          (lot) => lot.finish > problem.jobs.find((job) => job.orderId === lot.orderId)!.dueAt,
        );
        if (late === undefined) return;
        const ranked = remedies(problem, late.orderId);
        for (const { edit, plan, after } of ranked) {
          const edited = applyEdits(problem, [edit]);
          if (!edited.ok) throw new Error(edited.fault.text);
          expect(validateProblem(edited.problem)).toEqual([]);
          expect(auditPlan(edited.problem, plan)).toEqual([]);
          expect(after.total).toBe(plan.objective.total);
          found++;
        }
        const totals = ranked.map((remedy) => remedy.after.total);
        expect(totals).toEqual([...totals].sort((a, b) => a - b));
      }),
      { seed: 91, numRuns: 40 },
    );
    expect(found).toBeGreaterThan(20);
  });
});

describe("edits of a problem", () => {
  const lots = { most: 2, leastPieces: 1, unitPieces: 1 };
  const problem = twoMouldPlant({ jobs: [jobOf("o", "1", "A"), jobOf("split", "1", "A", { lots })] });
  const refused: readonly [ProblemEdit, string][] = [
    [{ kind: "extra shift", lineId: "9", from: 0, to: 1 }, "unknown-record"],
    [{ kind: "extra shift", lineId: "1", from: 5, to: 5 }, "empty-spell"],
    [{ kind: "extra operators", poolId: "none", hundredths: 100, from: 0, to: 1 }, "unknown-record"],
    [{ kind: "line down", lineId: "9", from: 0, to: 1 }, "unknown-record"],
    [{ kind: "mould copy", mouldId: "Z" }, "unknown-record"],
    [{ kind: "earlier start", orderId: "p", at: 0 }, "unknown-record"],
    [{ kind: "earlier sheet", sheetId: "PP", seconds: 1 }, "unknown-record"],
    [{ kind: "order cancelled", orderId: "p" }, "unknown-record"],
    [{ kind: "lots", orderId: "p", most: 2, leastPieces: 1, unitPieces: 1 }, "unknown-record"],
    [{ kind: "lots", orderId: "split", most: 2, leastPieces: 1, unitPieces: 1 }, "already-there"],
    [{ kind: "rush order", job: jobOf("o", "1", "A") }, "already-there"],
  ];
  it.each(refused)("that cannot be made are refused with a remedy: %o", (edit, code) => {
    const edited = applyEdits(problem, [edit]);
    expect(edited.ok ? null : edited.fault).toMatchObject({ code });
    expect(edited.ok ? "" : edited.fault.remedy).not.toBe("");
  });

  it("are made in their order and leave the given problem alone", () => {
    const before = JSON.stringify(problem);
    const edited = applyEdits(problem, [
      { kind: "rush order", job: jobOf("rush", "2", "B") },
      { kind: "order cancelled", orderId: "o" },
      { kind: "line down", lineId: "1", from: 0, to: DAY },
      { kind: "extra team", from: 0, to: DAY },
      { kind: "extra team", from: 0, to: DAY },
    ]);
    if (!edited.ok) throw new Error(edited.fault.text);
    expect(edited.problem.jobs.map((job) => job.orderId)).toEqual(["split", "rush"]);
    expect(edited.problem.lines[0]?.workingTime.starts).toEqual([DAY]);
    expect(new Set(edited.problem.teams.map((team) => team.id)).size).toBe(3);
    expect(validateProblem(edited.problem)).toEqual([]);
    expect(JSON.stringify(problem)).toBe(before);
  });
});
