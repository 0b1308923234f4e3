import { describe, expect, it } from "vitest";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  openEdits,
  solve,
  type EditTable,
  type Job,
  type Plan,
  type PlanEdit,
  type ProblemData,
} from "../index.ts";

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 60, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

function tableOf(problem: ProblemData, plan: Plan = planOf(problem)): EditTable {
  const opened = openEdits(problem, plan);
  if (!opened.ok) throw new Error(opened.error[0]!.text);
  return opened.value;
}

function edited(problem: ProblemData, edit: PlanEdit, plan?: Plan): Plan {
  const result = tableOf(problem, plan).apply(edit);
  if (!result.ok) throw new Error(result.error.text);
  return result.value;
}

const runs = (plan: Plan, lineId: string): readonly (readonly [string, number, number])[] =>
  plan.segments.flatMap((each) =>
    each.kind === "run" && each.lineId === lineId
      ? [[each.orderId, each.start / HOUR, each.end / HOUR] as const]
      : [],
  );

/** Line 1 makes a, then b, with mould A; line 2 is bare and idle. Each runs 1 h; a change takes 3 h to a bare line. */
const onEither = (id: string, part: Partial<Job> = {}): Job => ({
  ...jobOf(id, "1", "A"),
  options: ["1", "2"].map((lineId) => ({ lineId, setupId: "A", secondsPerPiece: 1 })),
  ...part,
});
const twoOrders = twoMouldPlant({
  jobs: [jobOf("a", "1", "A", { dueAt: 4 * HOUR }), onEither("b", { dueAt: 6 * HOUR })],
});

describe("a plan worked by hand", () => {
  it("moves a lot ahead of another on its line, with the instants that follow", () => {
    // mount 2 h, tail 1 h, then one hour each
    expect(runs(planOf(twoOrders), "1")).toEqual([
      ["a", 3, 4],
      ["b", 4, 5],
    ]);
    const before = { orderId: "a", lot: 0 };
    const plan = edited(twoOrders, { kind: "move", orderId: "b", lot: 0, lineId: "1", before });
    expect(runs(plan, "1")).toEqual([
      ["b", 3, 4],
      ["a", 4, 5],
    ]);
    expect(plan.objective.terms.find(({ name }) => name === "weighted tardiness")!.amount).toBe(1);
  });

  it("moves a lot to another line, and has its mould taken out and carried there", () => {
    const plan = edited(twoOrders, { kind: "move", orderId: "b", lot: 0, lineId: "2", before: null });
    expect(runs(plan, "1")).toEqual([["a", 3, 4]]);
    // mould A comes out of line 1 from 4 h to 5 h, is carried for 10 min, mounted for 2 h and warmed up for 1 h
    expect(runs(plan, "2")).toEqual([["b", 8 + 1 / 6, 9 + 1 / 6]]);
  });

  it("makes a lot with the mould that is asked for, and refuses one that does not make it there", () => {
    const both = ["A", "B"].map((setupId) => ({ lineId: "1", setupId, secondsPerPiece: 1 }));
    const refusals = [{ lineId: "1", mouldId: "C", code: "fit", text: "Mould C is too wide for line 1." }];
    const problem = twoMouldPlant({ jobs: [jobOf("a", "1", "A", { options: both, refusals })] });
    const plan = planOf(problem);
    const setupOf = ({ lots }: Plan) => lots[0]!.setupId;
    const other = setupOf(plan) === "A" ? "B" : "A";
    const move = { kind: "move", orderId: "a", lot: 0, lineId: "1", before: null } as const;
    expect(setupOf(edited(problem, move, plan))).toBe(setupOf(plan));
    expect(setupOf(edited(problem, { ...move, mouldId: other }, plan))).toBe(other);
    const table = tableOf(problem, plan);
    expect(table.apply({ ...move, mouldId: setupOf(plan) })).toEqual({ ok: true, value: table.plan });
    const refused = table.apply({ ...move, mouldId: "C" });
    expect(refused).toMatchObject({ ok: false, error: { code: "mould-does-not-fit", lineId: "1" } });
    if (refused.ok) throw new Error("mould C makes nothing");
    expect(refused.error.text).toContain("too wide");
    expect(refused.error.remedy).toContain("A, B");
  });

  it("takes an order out until it is put back, where it costs least", () => {
    const without = edited(twoOrders, { kind: "take out", orderId: "a" });
    expect(runs(without, "1")).toEqual([["b", 3, 4]]);
    expect(without.unplanned).toEqual([
      { orderId: "a", reasons: [expect.objectContaining({ code: "taken-out", lineId: null })] },
    ]);
    const moved = edited(
      twoOrders,
      { kind: "move", orderId: "b", lot: 0, lineId: "2", before: null },
      without,
    );
    expect(moved.unplanned).toEqual(without.unplanned);
    expect(edited(twoOrders, { kind: "put back", orderId: "a" }, without)).toEqual(planOf(twoOrders));
  });

  it("gives the standing plan itself where nothing moves", () => {
    const table = tableOf(twoOrders);
    for (const before of [{ orderId: "b", lot: 0 }, null]) {
      const result = table.apply({ kind: "move", orderId: "b", lot: 0, lineId: "1", before });
      expect(result.ok && result.value).toBe(table.plan);
    }
  });
});

describe("a turn that has lost its reason", () => {
  it("becomes usual again where it delays its lot and costs more", () => {
    // one team mounts for 2 h; d, on line 2, is urgent, so b on line 1 gives way to all others
    const lineIds = ["1", "2", "3", "4"];
    const jobs = [
      jobOf("b", "1", "B", { dueAt: 8 * HOUR, weight: 5 }),
      jobOf("d", "2", "A", { dueAt: 4 * HOUR }),
      jobOf("e", "3", "A"),
      jobOf("x", "3", "A", {
        options: ["3", "4"].map((lineId) => ({ lineId, setupId: "A", secondsPerPiece: 1 })),
      }),
    ];
    const moulds = ["A", "B"].map((id) => ({ id, copies: 3, carryingSeconds: 0, outOfService: [] }));
    const problem = twoMouldPlant({ lines: lineIds.map((id) => lineOf(id)), moulds, jobs });
    const lots = jobs.map(({ orderId, options, pieces }, i) => {
      const { lineId, setupId } = options[0]!;
      const given = { orderId, lot: 0, lineId, setupId, pieces, start: i, end: i + 1, finish: i + 1 };
      return orderId === "b" ? { ...given, turn: "gives way" as const } : given;
    });
    const table = tableOf(problem, { ...planOf(problem), lots });
    expect(runs(table.plan, "1")).toEqual([["b", 7, 8]]);
    // one mounting more would come before b, which would be finished at 10 h
    const result = table.apply({ kind: "move", orderId: "x", lot: 0, lineId: "4", before: null });
    expect(result.ok && runs(result.value, "1")).toEqual([["b", 3, 4]]);
    // an edit that delays nobody leaves the turn as it is
    const other = table.apply({ kind: "take out", orderId: "x" });
    expect(other.ok && runs(other.value, "1")).toEqual([["b", 7, 8]]);
  });
});

describe("an edit that cannot be", () => {
  const refused = (problem: ProblemData, edit: PlanEdit, plan?: Plan) => {
    const result = tableOf(problem, plan).apply(edit);
    if (result.ok) throw new Error("It was done.");
    expect(result.error.text).not.toBe("");
    expect(result.error.remedy).not.toBe("");
    return result.error;
  };
  const move = (orderId: string, lineId: string, before: string | null = null, lot = 0): PlanEdit => ({
    kind: "move",
    orderId,
    lot,
    lineId,
    before: before === null ? null : { orderId: before, lot: 0 },
  });

  it("names what is unknown", () => {
    expect(refused(twoOrders, move("x", "1"))).toMatchObject({ code: "order-unknown", orderId: "x" });
    expect(refused(twoOrders, move("a", "9"))).toMatchObject({ code: "line-unknown", lineId: "9" });
    expect(refused(twoOrders, move("a", "1", null, 1))).toMatchObject({ code: "lot-unknown", lot: 1 });
    expect(refused(twoOrders, move("a", "1", null, -1))).toMatchObject({ code: "lot-unknown", lot: -1 });
    expect(refused(twoOrders, move("a", "1", null, 0.5))).toMatchObject({ code: "lot-unknown" });
    expect(refused(twoOrders, move("b", "2", "a"))).toMatchObject({
      code: "place-unknown",
      otherOrderId: "a",
    });
  });

  it("names the line that no mould of the order fits, with the reasons of the fit", () => {
    const [a, b] = twoOrders.jobs;
    const refusals = [{ lineId: "2", mouldId: "A", code: "too-wide", text: "Mould A is 40 mm too wide." }];
    const problem = { ...twoOrders, jobs: [{ ...a!, refusals }, b!] };
    const refusal = refused(problem, move("a", "2"));
    expect(refusal).toMatchObject({ code: "does-not-fit", lineId: "2" });
    expect(refusal.text).toContain("40 mm too wide");
  });

  it("keeps what is held: line, start and sequence", () => {
    const pin = (orderId: string, part: Partial<ProblemData["pins"][number]>): ProblemData => ({
      ...twoOrders,
      pins: [{ orderId, lineId: null, startAt: null, sequence: null, ...part }],
    });
    expect(refused(pin("b", { lineId: "1" }), move("b", "2"))).toMatchObject({ code: "held-on-line" });
    expect(refused(pin("b", { startAt: 4 * HOUR }), move("b", "2"))).toMatchObject({ code: "held-at-start" });
    expect(refused(pin("a", { startAt: 3 * HOUR }), move("b", "1", "a"))).toMatchObject({
      code: "crowds-out",
      otherOrderId: "a",
    });
    const inSequence = pin("a", { lineId: "1", sequence: 0 });
    expect(refused(inSequence, move("a", "1"))).toMatchObject({ code: "held-in-sequence" });
    expect(refused(inSequence, move("b", "1", "a"))).toMatchObject({
      code: "held-in-sequence",
      otherOrderId: "a",
    });
  });

  it("says which order would find no room any more, or that there is none for the lot itself", () => {
    const [a, b] = twoOrders.jobs;
    const problem = { ...twoOrders, jobs: [{ ...a!, latestStartAt: 3 * HOUR }, b!] };
    expect(refused(problem, move("b", "1", "a"))).toMatchObject({ code: "crowds-out", otherOrderId: "a" });
    expect(refused(problem, move("a", "1"))).toMatchObject({ code: "no-room", otherOrderId: null });
  });

  it("does not take out what is not planned, nor put back what is", () => {
    expect(refused(twoOrders, { kind: "put back", orderId: "a" }).code).toBe("planned-already");
    const without = edited(twoOrders, { kind: "take out", orderId: "a" });
    expect(refused(twoOrders, { kind: "take out", orderId: "a" }, without).code).toBe("not-planned");
    expect(refused(twoOrders, move("a", "1"), without).code).toBe("not-planned");
    const nowhere = twoMouldPlant({ jobs: [jobOf("o", "1", "A", { options: [] })] });
    expect(refused(nowhere, { kind: "put back", orderId: "o" }).code).toBe("does-not-fit");
  });

  it("names the faults of a problem that no plan could respect", () => {
    const opened = openEdits({ ...twoOrders, horizon: { start: 5, end: 5 } }, planOf(twoOrders));
    expect(opened).toMatchObject({ ok: false, error: [{ code: "horizon-empty" }] });
  });
});
