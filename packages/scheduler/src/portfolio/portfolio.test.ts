import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { largePlant } from "../../../../tests/helpers/large-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { DAY, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { createRandom } from "../chance/random.ts";
import { chooseMethod } from "../improve/choose-method.ts";
import { PortfolioCourse, openGroup, solve, type ProblemData, type SolveParams } from "../index.ts";
import { Decoder } from "../timing/decoder.ts";
import { memberOf } from "./member.ts";
import { bounded, firstPlanning, type Prepared } from "./prepare.ts";
import { SearchSession } from "./search-session.ts";
import { finish } from "../work/work.ts";

const plants = problemArb({ ...SMALL_PLANT, jobs: 9 });

const ORDERS = 14;

/** Random orders on lines without moulds or teams, each order with a set-up of its own. */
function plainPlant(lineIds: readonly string[], objective: Partial<ProblemData["objective"]>): ProblemData {
  const random = createRandom(5);
  const ids = Array.from({ length: ORDERS }, (_, order) => `o${order}`);
  const setups = ["bare", ...ids].map((id) => ({ id, mouldId: null, sheetId: null, strippedId: id }));
  const changes = Array.from({ length: 30 }, (_, i) => ({
    dismountSeconds: 0,
    mountSeconds: 0,
    tailSeconds: 100 * (i + 1),
    usesTrolley: false,
    scrapKg: 0,
  }));
  const matrix = setups.map((_, from) => setups.map((__, to) => (from === to ? -1 : random.below(30))));
  const jobs = ids.map((id) =>
    jobOf(id, "", id, {
      dueAt: random.below(DAY),
      weight: 1 + random.below(9),
      options: lineIds.map((lineId) => ({ lineId, setupId: id, secondsPerPiece: 0.3 + random.unit() * 2 })),
    }),
  );
  const plant = twoMouldPlant({});
  return {
    ...plant,
    lines: lineIds.map((id) => lineOf(id)),
    moulds: [],
    setups,
    changeClasses: [{ id: "C", matrix }],
    changes,
    teams: [],
    jobs,
    objective: { ...plant.objective, changePerMachineHour: 0, changePerTeamHour: 0, ...objective },
  };
}

const examples: readonly (readonly [string, ProblemData])[] = [
  ["sequences of one line", plainPlant(["1"], {})],
  [
    "balance of parallel lines",
    plainPlant(["1", "2", "3"], { tardinessPerWeightHour: 0, makespanPerHour: 3600 }),
  ],
  ["ruin and recreate", fc.sample(problemArb({ ...SMALL_PLANT, jobs: 14 }), { seed: 8, numRuns: 1 })[0]!],
];

/** The same portfolio with its members dealt to several groups, whose messages are copied as between threads. */
function inGroups(problem: ProblemData, params: SolveParams, deal: readonly (readonly number[])[]) {
  const groups = deal.map((members) => {
    const opened = openGroup({ problem, params, members }, stillEnv());
    if (opened.status !== "open") throw new Error(opened.status);
    return { members, group: opened.group };
  });
  const course = new PortfolioCourse(params);
  let move = course.first(0);
  while (move.kind === "round") {
    const { round, adoptions } = move;
    const standings = groups.flatMap(({ group }) => group.runRound(round, structuredClone(adoptions)));
    move = course.next(structuredClone(standings), 0);
  }
  const { winner } = move;
  return groups.find(({ members }) => members.includes(winner.member))?.group.finish(winner);
}

describe("a portfolio on a step budget", () => {
  it("comes to the same plan however its members are dealt out", () => {
    fc.assert(
      fc.property(plants, (problem) => {
        const params = { seed: 3, maxSteps: 96, maxMs: null, members: 3 };
        const one = solve(problem, params, stillEnv());
        expect(one.status).toBe("planned");
        const others = [[[0, 1, 2]], [[0, 2], [1]], [[2], [1], [0]]];
        for (const deal of others) {
          const other = inGroups(problem, params, deal);
          expect(other?.status === "planned" && one.status === "planned" && other.plan).toEqual(
            one.status === "planned" && one.plan,
          );
        }
      }),
      { seed: 11, numRuns: 8 },
    );
  });

  it("of one member is the search alone", () => {
    const [, problem] = examples[2]!;
    const alone = solve(problem, { seed: 3, maxSteps: 200, maxMs: null }, stillEnv());
    const one = solve(problem, { seed: 3, maxSteps: 200, maxMs: null, members: 1 }, stillEnv());
    expect(one).toEqual(alone);
  });
});

function sessionOf(prepared: Prepared, seed: number): SearchSession {
  const params = { seed, maxSteps: 1000, maxMs: null };
  return new SearchSession(prepared, memberOf(params, 0), params, stillEnv());
}

const stretch = (toStep: number) => ({ toStep, fromMs: 0, toMs: null, fromShare: 0, toShare: 1 });

describe.each(examples)("%s", (name, problem) => {
  const params = { seed: 1, maxSteps: 1000, maxMs: null };
  const prepared = bounded(finish(firstPlanning(problem, params, stillEnv())), stillEnv());

  it("is the search that the example is made for", () => {
    expect(chooseMethod(prepared.problem).name).toBe(name);
  });

  it("goes on from an adopted plan, and is never dearer than it", () => {
    const decoder = new Decoder(prepared.problem, false);
    let taken = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const [rich, poor] = [sessionOf(prepared, seed), sessionOf(prepared, 100 + seed)];
      rich.advance(stretch(60), () => undefined);
      poor.advance(stretch(seed % 4), () => undefined);
      const elite = rich.elite();
      const before = poor.bestMoney();
      poor.adopt(elite);
      expect(poor.bestMoney()).toBe(Math.min(before, rich.bestMoney()));
      if (rich.bestMoney() < before) taken++;
      poor.advance(stretch(50), () => undefined);
      expect(poor.bestMoney()).toBeLessThanOrEqual(rich.bestMoney());
      expect(decoder.decode(poor.elite())).toBeCloseTo(poor.bestMoney(), 6);
      // the plan that was handed over is not written on
      expect(decoder.decode(elite)).toBeCloseTo(rich.bestMoney(), 6);
    }
    expect(taken).toBeGreaterThan(3);
  });
});

describe("a cancel before the first plan", () => {
  const [problem] = fc.sample(plants, { seed: 2, numRuns: 1 }) as [ProblemData];
  const cancelled = { ...stillEnv(), isCancelled: () => true };
  const params = { seed: 1, maxSteps: null, maxMs: 1000 };

  it("of a small problem still gives one", () => {
    expect(solve(problem, params, cancelled)).toMatchObject({ status: "planned", stopped: "cancelled" });
  });

  it("of a large one ends without", () => {
    expect(solve(largePlant(problem), params, cancelled)).toEqual({ status: "cancelled" });
  });
});
