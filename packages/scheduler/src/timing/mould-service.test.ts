import { describe, expect, it } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { auditPlan } from "../audit/audit-plan.ts";
import { whyThen } from "../explain/why-late.ts";
import type { Plan, Segment } from "../plan/plan.ts";
import type { CycleService, ProblemData, ProblemMould } from "../problem/problem-data.ts";
import { applyEdit } from "../remedy/problem-edit.ts";
import { solve } from "../solve.ts";

const SERVED: CycleService = { afterCycles: 900, seconds: HOUR, cyclesDone: [0] };

const moulds = (service: CycleService): readonly ProblemMould[] => [
  { id: "A", copies: 1, carryingSeconds: 600, outOfService: [], service },
  { id: "B", copies: 1, carryingSeconds: 600, outOfService: [] },
];

/** Line 1 with mould A on it makes orders of an hour, 900 cycles of four pieces each. */
function plant(
  service: CycleService,
  orders: readonly string[],
  part: Partial<ProblemData> = {},
): ProblemData {
  const options = [{ lineId: "1", setupId: "A", secondsPerPiece: 1, piecesPerCycle: 4 }];
  return twoMouldPlant({
    lines: [lineOf("1", { initial: { setupId: "A", copy: 0 } })],
    moulds: moulds(service),
    jobs: orders.map((id) => jobOf(id, "1", "A", { options })),
    ...part,
  });
}

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 1, maxSteps: 50, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  expect(auditPlan(problem, result.plan)).toEqual([]);
  return result.plan;
}

const rows = (plan: Plan): unknown[] =>
  plan.segments.map((segment) => [
    segment.kind === "stop" ? segment.reason : segment.kind,
    segment.start / HOUR,
    segment.end / HOUR,
  ]);

describe("the service of a mould after its cycles", () => {
  // Common practice, no source.
  it("lies before the lot that would bring the count past its limit, and the count begins anew", () => {
    expect(rows(planOf(plant({ ...SERVED, afterCycles: 1800 }, ["a", "b", "c", "d"])))).toEqual([
      ["run", 0, 1],
      ["run", 1, 2],
      ["service", 2, 3],
      ["run", 3, 4],
      ["run", 4, 5],
    ]);
  });

  it("counts from the cycles done before, and lets a lot longer than the limit run through on a fresh copy", () => {
    expect(rows(planOf(plant({ ...SERVED, cyclesDone: [1] }, ["a"])))).toEqual([
      ["service", 0, 1],
      ["run", 1, 2],
    ]);
    expect(rows(planOf(plant({ ...SERVED, afterCycles: 10 }, ["a", "b"])))).toEqual([
      ["run", 0, 1],
      ["service", 1, 2],
      ["run", 2, 3],
    ]);
  });

  it("comes between the change and the run, and a run that waits may follow later", () => {
    const base = plant({ ...SERVED, cyclesDone: [5] }, ["a"]);
    const [job] = base.jobs;
    if (job === undefined) throw new Error("no job");
    const lines = [lineOf("1")];
    expect(rows(planOf({ ...base, lines }))).toEqual([
      ["change", 0, 3],
      ["service", 3, 4],
      ["run", 4, 5],
    ]);
    const late = { ...job, earliestStartAt: 4.5 * HOUR };
    expect(rows(planOf({ ...base, lines, jobs: [late] }))).toEqual([
      ["change", 0, 3],
      ["service", 3, 4],
      ["run", 4.5, 5.5],
    ]);
  });

  it("takes a mould that swaps without a change from its own start on", () => {
    const base = plant({ ...SERVED, cyclesDone: [5] }, ["a"]);
    expect(rows(planOf({ ...base, lines: [lineOf("1", { initial: null })] }))).toEqual([
      ["service", 0, 1],
      ["run", 1, 2],
    ]);
  });

  it("is a link of the chain that holds an order, and another copy helps", () => {
    const problem = plant(SERVED, ["a", "b"]);
    const plan = planOf(problem);
    const last = plan.lots.find(({ start }) => start > 0)?.orderId ?? "";
    const links = whyThen(problem, plan, last)?.links ?? [];
    expect(links.map(({ kind, from, to }) => [kind, from / HOUR, to / HOUR])).toEqual([
      ["run", 0, 1],
      ["mould service", 1, 2],
      ["run", 2, 3],
    ]);
    expect(links[1]).toMatchObject({ mouldId: "A", lineId: "1", orderId: last });
    const edited = applyEdit(problem, { kind: "mould copy", mouldId: "A" });
    expect(edited.ok && edited.problem.moulds[0]?.copies).toBe(2);
    if (edited.ok) planOf(edited.problem);
  });

  it.each<[string, Partial<CycleService>]>([
    ["no cycles", { afterCycles: 0 }],
    ["half a cycle done", { cyclesDone: [0.5] }],
    ["no time", { seconds: 0 }],
    ["more copies than there are", { cyclesDone: [0, 0] }],
  ])("is refused with %s", (_, part) => {
    const result = solve(
      plant({ ...SERVED, ...part }, ["a"]),
      { seed: 1, maxSteps: 1, maxMs: null },
      stillEnv(),
    );
    expect(result.status === "faulty-problem" && result.faults.map(({ code }) => code)).toEqual([
      "mould-service",
    ]);
  });

  it("is refused where a cycle makes no whole number of pieces", () => {
    const options = [{ lineId: "1", setupId: "A", secondsPerPiece: 1, piecesPerCycle: 1.5 }];
    const problem = plant(SERVED, [], { jobs: [jobOf("a", "1", "A", { options })] });
    const result = solve(problem, { seed: 1, maxSteps: 1, maxMs: null }, stillEnv());
    expect(result.status === "faulty-problem" && result.faults.map(({ code }) => code)).toEqual([
      "pieces-per-cycle",
    ]);
  });
});

describe("the audit of services", () => {
  const problem = plant(SERVED, ["a", "b"]);
  const spoilt = (spoil: (segments: Segment[], service: number) => void): string[] => {
    const plan = planOf(problem);
    const segments = [...plan.segments];
    spoil(
      segments,
      segments.findIndex(({ kind }) => kind === "stop"),
    );
    return auditPlan(problem, { ...plan, segments }).map(({ code }) => code);
  };

  it("misses a service that is left out", () => {
    expect(spoilt((segments, at) => segments.splice(at, 1))).toEqual(["service-missing"]);
  });

  it("sees one that is too short", () => {
    const codes = spoilt((segments, at) => {
      const service = segments[at];
      if (service !== undefined) segments[at] = { ...service, end: service.end - 1 };
    });
    expect(codes).toEqual(["wrong-service"]);
  });

  it("sees one that is not due", () => {
    const never = twoMouldPlant({}).moulds;
    const codes = auditPlan({ ...problem, moulds: never }, planOf(problem)).map(({ code }) => code);
    expect(codes).toEqual(["service-not-due"]);
  });

  it("sees one that does not lie right before its run", () => {
    const codes = spoilt((segments, at) => {
      const service = segments[at];
      const first = segments[0];
      if (service === undefined || first === undefined) return;
      segments.splice(at, 1);
      segments.unshift({ ...service, start: first.start - HOUR, end: first.start });
    });
    expect(codes).toContain("wrong-service");
  });
});
