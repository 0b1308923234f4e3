import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { createRandom, type Random } from "../chance/random.ts";
import {
  auditPlan,
  openEdits,
  solve,
  type EditTable,
  type Plan,
  type PlanEdit,
  type PlannedLot,
  type ProblemData,
} from "../index.ts";

/** Many random plants: on a busy machine they take longer than one example may. */
const MANY_PLANTS = { timeout: 60_000 };

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 40, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

function tableOf(problem: ProblemData, plan: Plan): EditTable {
  const opened = openEdits(problem, plan);
  if (!opened.ok) throw new Error(opened.error[0]!.text);
  return opened.value;
}

/** A lot by what an edit leaves alone; its number follows the order of the starts. */
const nameOf = ({ orderId, pieces }: PlannedLot): string => `${orderId} × ${pieces}`;

type Rows = ReadonlyMap<string, readonly PlannedLot[]>;

/** Lots line by line, in the order of their starts. */
function rowsOf({ lines }: ProblemData, { lots }: Plan): Rows {
  return new Map(
    lines.map(({ id }) => [
      id,
      lots.filter(({ lineId }) => lineId === id).sort((a, b) => a.start - b.start || a.end - b.end),
    ]),
  );
}

const namesOf = (rows: Rows): Record<string, readonly string[]> =>
  Object.fromEntries([...rows].map(([id, row]) => [id, row.map(nameOf)]));

const isLot = (one: { orderId: string; lot: number }, other: { orderId: string; lot: number }): boolean =>
  one.orderId === other.orderId && one.lot === other.lot;

/** What a move makes of the rows, by moving list entries alone. */
function moved(rows: Rows, edit: Extract<PlanEdit, { kind: "move" }>): Record<string, readonly string[]> {
  const lot = [...rows.values()].flat().find((each) => isLot(each, edit))!;
  const { before } = edit;
  return Object.fromEntries(
    [...rows].map(([id, row]) => {
      const at = before === null ? row.length : row.findIndex((each) => isLot(each, before));
      const entries = row.flatMap((each, i) => [
        ...(id === edit.lineId && i === at ? [nameOf(lot)] : []),
        ...(each === lot ? [] : [nameOf(each)]),
      ]);
      return [id, id === edit.lineId && at === row.length ? [...entries, nameOf(lot)] : entries];
    }),
  );
}

function anyOf<T>(random: Random, list: readonly T[]): T {
  return list[random.below(list.length)]!;
}

function anyMove(problem: ProblemData, plan: Plan, random: Random): Extract<PlanEdit, { kind: "move" }> {
  const { orderId, lot } = anyOf(random, plan.lots);
  const { options } = problem.jobs.find((job) => job.orderId === orderId)!;
  const { lineId } = anyOf(random, options);
  const there = plan.lots.filter((each) => each.lineId === lineId);
  const place = random.below(there.length + 1);
  const next = there[place];
  return {
    kind: "move",
    orderId,
    lot,
    lineId,
    before: next === undefined ? null : { orderId: next.orderId, lot: next.lot },
  };
}

/** A split of an order that may be split, if the plan has one; pieces in its packing units, so that most are allowed. */
function anySplit(problem: ProblemData, plan: Plan, random: Random): PlanEdit {
  const rules = new Map(problem.jobs.map(({ orderId, lots }) => [orderId, lots]));
  const splittable = plan.lots.filter(({ orderId }) => rules.get(orderId) !== undefined);
  if (splittable.length === 0) return anyMove(problem, plan, random);
  const place = anyMove(problem, { ...plan, lots: splittable }, random);
  const { pieces } = plan.lots.find((each) => isLot(each, place))!;
  const { unitPieces } = rules.get(place.orderId)!;
  const units = Math.max(1, Math.floor(pieces / unitPieces));
  return { ...place, kind: "split", pieces: unitPieces * (1 + random.below(units)) };
}

function anyEdit(problem: ProblemData, plan: Plan, random: Random): PlanEdit {
  const kind = random.below(7);
  if (kind === 0 || plan.lots.length === 0)
    return { kind: "put back", orderId: anyOf(random, problem.jobs).orderId };
  const split = plan.lots.filter(({ lot }) => lot > 0);
  if (kind === 1) return { kind: "take out", orderId: anyOf(random, plan.lots).orderId };
  if (kind === 2 && split.length > 0) return { kind: "join", orderId: anyOf(random, split).orderId };
  return kind < 5 ? anyMove(problem, plan, random) : anySplit(problem, plan, random);
}

describe("plans worked by hand", () => {
  it("pass the audit after every edit, and are what their own sequences decode to", MANY_PLANTS, () => {
    const done = new Map<PlanEdit["kind"], number>();
    let refused = 0;
    fc.assert(
      fc.property(problemArb(), fc.integer({ min: 0, max: 1e6 }), (problem, seed) => {
        const random = createRandom(seed);
        let plan = planOf(problem);
        for (let i = 0; i < 8; i++) {
          const table = tableOf(problem, plan);
          expect(table.plan).toEqual(plan);
          const edit = anyEdit(problem, plan, random);
          const result = table.apply(edit);
          if (!result.ok) {
            refused++;
            continue;
          }
          done.set(edit.kind, (done.get(edit.kind) ?? 0) + 1);
          plan = result.value;
          expect(auditPlan(problem, plan)).toEqual([]);
        }
        // a table of its own, compiled from scratch, reads the plan back as it is
        expect(tableOf(problem, plan).plan).toEqual(plan);
      }),
      { seed: 201, numRuns: 100 },
    );
    for (const kind of ["move", "take out", "put back", "split", "join"] as const)
      expect(done.get(kind) ?? 0, kind).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(50);
  });

  it("stand under a problem that has changed since, by what of them may still run", MANY_PLANTS, () => {
    let changedPlans = 0;
    fc.assert(
      fc.property(problemArb(), fc.integer({ min: 0, max: 1e6 }), (problem, seed) => {
        const [first, second, ...others] = problem.jobs;
        const given = planOf({ ...problem, pins: [], jobs: [first!, ...others] });
        const changed: ProblemData = {
          ...problem,
          jobs: [second!, ...others.map((job) => ({ ...job, options: job.options.slice(1) }))],
          pins: problem.pins.filter(({ orderId }) => orderId !== first!.orderId),
        };
        const table = tableOf(changed, given);
        expect(auditPlan(changed, table.plan)).toEqual([]);
        if (table.plan.lots.length === 0) return;
        const result = table.apply(anyMove(changed, table.plan, createRandom(seed)));
        if (!result.ok) return;
        changedPlans++;
        expect(auditPlan(changed, result.value)).toEqual([]);
      }),
      { seed: 204, numRuns: 80 },
    );
    expect(changedPlans).toBeGreaterThan(20);
  });

  it("keep every other lot on its line, in its order", MANY_PLANTS, () => {
    let tried = 0;
    fc.assert(
      fc.property(problemArb(), fc.integer({ min: 0, max: 1e6 }), (problem, seed) => {
        const plan = planOf(problem);
        fc.pre(plan.lots.length > 0);
        const table = tableOf(problem, plan);
        const random = createRandom(seed);
        for (let i = 0; i < 6; i++) {
          const edit = anyMove(problem, plan, random);
          const result = table.apply(edit);
          if (!result.ok) continue;
          tried++;
          expect(namesOf(rowsOf(problem, result.value))).toEqual(moved(rowsOf(problem, plan), edit));
        }
      }),
      { seed: 202, numRuns: 100 },
    );
    expect(tried).toBeGreaterThan(150);
  });

  it("are as before when a lot is moved and moved back in the set-up that it had", MANY_PLANTS, () => {
    let back = 0;
    fc.assert(
      fc.property(problemArb(), fc.integer({ min: 0, max: 1e6 }), (problem, seed) => {
        const plan = planOf(problem);
        fc.pre(plan.lots.length > 0);
        const edit = anyMove(problem, plan, createRandom(seed));
        const there = tableOf(problem, plan).apply(edit);
        if (!there.ok) return;
        const lot = plan.lots.find((each) => isLot(each, edit))!;
        const row = rowsOf(problem, plan).get(lot.lineId)!;
        const next = row[row.indexOf(lot) + 1];
        // lots may have other numbers now: they are known by their pieces
        const now = (was: PlannedLot): readonly PlannedLot[] =>
          there.value.lots.filter((each) => nameOf(each) === nameOf(was));
        const [own, ...twins] = now(lot);
        const before = next === undefined ? null : now(next)[0]!;
        if (twins.length > 0 || (next !== undefined && now(next).length > 1)) return;
        if (own!.setupId !== lot.setupId || !isSameTurns(plan, there.value)) return;
        const again = tableOf(problem, there.value).apply({
          kind: "move",
          orderId: own!.orderId,
          lot: own!.lot,
          lineId: lot.lineId,
          before: before === null ? null : { orderId: before.orderId, lot: before.lot },
        });
        back++;
        expect(again.ok ? again.value : again.error).toEqual(plan);
      }),
      { seed: 203, numRuns: 200 },
    );
    expect(back).toBeGreaterThan(100);
  });
});

/** True when no lot takes its turn otherwise. */
function isSameTurns(one: Plan, other: Plan): boolean {
  const turns = ({ lots }: Plan): readonly string[] =>
    lots.flatMap((lot) => (lot.turn === undefined ? [] : [`${nameOf(lot)} ${lot.turn}`]));
  const before = turns(one);
  const after = new Set(turns(other));
  return before.length === after.size && before.every((turn) => after.has(turn));
}
