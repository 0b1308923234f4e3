import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import {
  openPromise,
  solve,
  type Job,
  type OpenDesk,
  type ProblemData,
  type PromiseAnswer,
  type SplitAnswer,
} from "../index.ts";
import { finish, type Work } from "../work/work.ts";

/** Opens desks on a random plant's plan without its last three orders; null where the plan does not follow from its runs. */
function opened(
  problem: ProblemData,
): { readonly open: () => OpenDesk; readonly orders: readonly Job[] } | null {
  const orders = problem.jobs.slice(-3);
  const without = new Set(orders.map(({ orderId }) => orderId));
  const standing = {
    ...problem,
    jobs: problem.jobs.slice(0, -3),
    pins: problem.pins.filter((pin) => !without.has(pin.orderId)),
  };
  const result = solve(standing, { seed: 3, maxSteps: 20, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  const { plan } = result;
  const open = (): OpenDesk => {
    const desk = openPromise(standing, plan);
    if (desk.status !== "open") throw new Error(desk.status);
    return desk;
  };
  return openPromise(standing, plan).status === "open" ? { open, orders } : null;
}

/** Work that is taken up in slices; it may end in any of them. */
class Sliced<Result> {
  private result: { readonly value: Result } | null = null;
  private readonly work: Work<Result>;

  constructor(work: Work<Result>) {
    this.work = work;
  }

  slice(): void {
    if (this.result !== null) return;
    const step = this.work.next();
    if (step.done === true) this.result = { value: step.value };
  }

  finished(): Result {
    while (this.result === null) this.slice();
    return this.result.value;
  }
}

/** All that an answer says, its plan too. */
function said(answer: PromiseAnswer | SplitAnswer): unknown {
  if (answer.status !== "promised") return answer;
  const { plan, hold, ...rest } = answer.promise;
  return { ...rest, made: plan(), held: hold().plan() };
}

describe("a desk that answers several questions", () => {
  it("answers each as a desk of its own would, though they overlap", () => {
    let promised = 0;
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, days: 14, jobs: 9 }), (problem) => {
        const asked = opened(problem);
        if (asked === null) return;
        const { open, orders } = asked;
        const [a, b, c] = orders as [Job, Job, Job];
        const desk = open();
        const first = desk.promise(a);
        const split = new Sliced(desk.splitOverLines(b));
        split.slice();
        const freed = new Set(desk.problem.jobs.map(({ orderId }) => orderId));
        const displacing = desk.displacing(c, freed);
        const part = new Sliced(desk.firstPart(a, b.dueAt));
        part.slice();
        split.slice();
        const again = desk.promise(c);
        const parts = part.finished();
        // what was answered first is made last
        expect(said(split.finished())).toEqual(said(finish(open().splitOverLines(b))));
        expect(said(again)).toEqual(said(open().promise(c)));
        expect(said(displacing)).toEqual(said(open().displacing(c, freed)));
        expect(said(first)).toEqual(said(open().promise(a)));
        const alone = finish(open().firstPart(a, b.dueAt));
        expect(parts.status).toBe(alone.status);
        if ("promise" in parts && "promise" in alone)
          expect(parts.promise.plan()).toEqual(alone.promise.plan());
        if (first.status === "promised") promised++;
      }),
      { seed: 105, numRuns: 60 },
    );
    expect(promised).toBeGreaterThan(20);
  });

  it("has room for an order of any number of options", () => {
    const standing = twoMouldPlant({ jobs: [jobOf("there", "1", "bare")] });
    const result = solve(standing, { seed: 1, maxSteps: 5, maxMs: null }, stillEnv());
    if (result.status !== "planned") throw new Error(result.status);
    const desk = openPromise(standing, result.plan);
    if (desk.status !== "open") throw new Error(desk.status);
    const options = Array.from({ length: 300 }, (_, i) => ({
      lineId: "2",
      setupId: "bare",
      secondsPerPiece: 2 - i / 299,
    }));
    const many = jobOf("many", "2", "bare", { options });
    expect(desk.promise(many)).toMatchObject({ promise: { finish: 3600, places: 300 } });
    expect(desk.promise(jobOf("few", "2", "bare"))).toMatchObject({ promise: { finish: 3600, places: 1 } });
  });
});
