import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../tests/helpers/still-env.ts";
import { auditPlan, solve, type ProblemData, type SolveResult, type UnplannedReason } from "./index.ts";

const [sound] = fc.sample(problemArb({ ...SMALL_PLANT, heads: false }), { seed: 51, numRuns: 1 }) as [
  ProblemData,
];

function faultsOf(problem: ProblemData): readonly string[] {
  const result = solve(problem, { seed: 1, maxSteps: 5, maxMs: null }, stillEnv());
  return result.status === "faulty-problem" ? result.faults.map((fault) => fault.code) : [];
}

const { lots: _, ...first } = sound.jobs[0]!;
const always = sound.lines[0]!.workingTime;
const easyJob = {
  ...first,
  pieces: 10,
  sheetId: null,
  earliestStartAt: sound.horizon.start,
  options: [{ lineId: "L0", setupId: "bare", secondsPerPiece: 1 }],
};
const easy: ProblemData = { ...sound, pins: [], jobs: [easyJob] };

describe("inputs that no plan could respect", () => {
  const cases: readonly [string, ProblemData][] = [
    ["horizon-empty", { ...easy, horizon: { start: 10, end: 10 } }],
    ["horizon-not-whole-seconds", { ...easy, horizon: { start: 0.5, end: 10 } }],
    ["horizon-too-long", { ...easy, horizon: { start: 0, end: 2_000_000_000 } }],
    [
      "plant-closed",
      {
        ...easy,
        lines: easy.lines.map((line) => ({
          ...line,
          workingTime: { starts: [], ends: [], workedBefore: [] },
        })),
      },
    ],
    [
      "rate-not-positive",
      { ...easy, jobs: [{ ...easyJob, options: [{ lineId: "L0", setupId: "bare", secondsPerPiece: 0 }] }] },
    ],
    [
      "rate-not-positive",
      { ...easy, jobs: [{ ...easyJob, options: [{ lineId: "L0", setupId: "bare", secondsPerPiece: NaN }] }] },
    ],
    [
      "unknown-line",
      {
        ...easy,
        jobs: [{ ...easyJob, options: [{ lineId: "nowhere", setupId: "bare", secondsPerPiece: 1 }] }],
      },
    ],
    [
      "unknown-setup",
      { ...easy, jobs: [{ ...easyJob, options: [{ lineId: "L0", setupId: "none", secondsPerPiece: 1 }] }] },
    ],
    ["unknown-sheet", { ...easy, jobs: [{ ...easyJob, sheetId: "none" }] }],
    ["pieces", { ...easy, jobs: [{ ...easyJob, pieces: 0 }] }],
    ...[
      { most: 0, leastPieces: 1, unitPieces: 1 },
      { most: 2, leastPieces: 0, unitPieces: 1 },
      { most: 2, leastPieces: 1, unitPieces: 0 },
      { most: 2, leastPieces: 1, unitPieces: 1.5 },
    ].map((lots): [string, ProblemData] => ["split-numbers", { ...easy, jobs: [{ ...easyJob, lots }] }]),
    ["lot-size", { ...easy, jobs: [{ ...easyJob, lotSize: { leastPieces: 0, unitPieces: 1 } }] }],
    ["lot-size", { ...easy, jobs: [{ ...easyJob, lotSize: { leastPieces: 1, unitPieces: NaN } }] }],
    [
      "split-least-pieces",
      { ...easy, jobs: [{ ...easyJob, pieces: 9, lots: { most: 2, leastPieces: 10, unitPieces: 1 } }] },
    ],
    ["order-times", { ...easy, jobs: [{ ...easyJob, dueAt: NaN }] }],
    ["order-times", { ...easy, jobs: [{ ...easyJob, latestStartAt: 0.5 }] }],
    ["order-numbers", { ...easy, jobs: [{ ...easyJob, weight: Infinity }] }],
    ["duplicate-order", { ...easy, jobs: [easyJob, easyJob] }],
    ["duplicate-line", { ...easy, lines: [easy.lines[0]!, ...easy.lines] }],
    [
      "unknown-mould",
      { ...easy, setups: easy.setups.map((setup, s) => (s === 1 ? { ...setup, mouldId: "none" } : setup)) },
    ],
    [
      "stripped-state",
      {
        ...easy,
        setups: easy.setups.map((setup, s) => (s === 1 ? { ...setup, strippedId: setup.id } : setup)),
      },
    ],
    [
      "change-matrix",
      { ...easy, changeClasses: easy.changeClasses.map((each) => ({ ...each, matrix: [] })) },
    ],
    ["change-times", { ...easy, changes: easy.changes.map((spec) => ({ ...spec, tailSeconds: -1 })) }],
    ["price", { ...easy, objective: { ...easy.objective, scrapPerKg: NaN } }],
    ["mould-copies", { ...easy, moulds: easy.moulds.map((mould) => ({ ...mould, copies: -1 })) }],
    [
      "pin-unknown-order",
      { ...easy, pins: [{ orderId: "none", lineId: null, startAt: null, sequence: null }] },
    ],
    [
      "pin-unknown-line",
      { ...easy, pins: [{ orderId: easyJob.orderId, lineId: "none", startAt: null, sequence: null }] },
    ],
    [
      "pin-start-before-horizon",
      { ...easy, pins: [{ orderId: easyJob.orderId, lineId: null, startAt: 5, sequence: null }] },
    ],
    [
      "pin-sequence",
      { ...easy, pins: [{ orderId: easyJob.orderId, lineId: null, startAt: null, sequence: 1 }] },
    ],
    [
      "pin-sequence-twice",
      {
        ...easy,
        jobs: [easyJob, { ...easyJob, orderId: "second" }],
        pins: [easyJob.orderId, "second"].map((orderId) => ({
          orderId,
          lineId: "L0",
          startAt: null,
          sequence: 0,
        })),
      },
    ],
    [
      "pin-cycle",
      {
        ...easy,
        jobs: [easyJob, { ...easyJob, orderId: "second" }],
        pins: [easyJob.orderId, "second"].map((orderId, i) => ({
          orderId,
          lineId: "L0",
          startAt: easy.horizon.start + (1 - i) * 3600,
          sequence: i,
        })),
      },
    ],
    [
      "duplicate-pin",
      {
        ...easy,
        pins: [0, 1].map(() => ({ orderId: easyJob.orderId, lineId: null, startAt: null, sequence: null })),
      },
    ],
  ];
  it.each(cases)("are named: %s", (code, problem) => {
    expect(faultsOf(problem)).toContain(code);
  });
  it.each(Object.keys(easy.objective))("name the price %s when it is missing, and the remedy", (name) => {
    const { [name]: _, ...others } = { ...easy.objective } as Record<string, number>;
    const problem = { ...easy, objective: others as unknown as ProblemData["objective"] };
    const result = solve(problem, { seed: 1, maxSteps: 5, maxMs: null }, stillEnv());
    expect(result).toMatchObject({
      status: "faulty-problem",
      faults: [{ code: "price", subject: name, text: `The price ${name} is missing.` }],
    });
    expect(result.status === "faulty-problem" && result.faults[0]?.remedy).toContain(name);
  });
  it("does not find fault with a sound problem", () => {
    expect(faultsOf(easy)).toEqual([]);
  });
});

function reasonsFor(problem: ProblemData): readonly UnplannedReason["code"][] {
  const result = solve(problem, { seed: 1, maxSteps: 5, maxMs: null }, stillEnv());
  expect(result.status).toBe("planned");
  return result.status === "planned"
    ? result.plan.unplanned.flatMap((order) => order.reasons.map((reason) => reason.code))
    : [];
}

describe("orders that cannot be planned", () => {
  const horizonLength = easy.horizon.end - easy.horizon.start;
  it("have a reason when no line fits", () => {
    expect(reasonsFor({ ...easy, jobs: [{ ...easyJob, options: [] }] })).toEqual(["no-line-fits"]);
  });
  it("have a reason when a billion pieces take longer than the horizon", () => {
    expect(reasonsFor({ ...easy, jobs: [{ ...easyJob, pieces: 1_000_000_000 }] })).toContain(
      "line-never-open-long-enough",
    );
  });
  it("have a reason when the sheet never comes", () => {
    const sheets = easy.sheets.map((sheet) => ({ ...sheet, stockKg: 1, arrivals: [] }));
    expect(
      reasonsFor({ ...easy, sheets, jobs: [{ ...easyJob, sheetId: "S0", sheetKgPerPiece: 1 }] }),
    ).toContain("sheet-never-arrives");
  });
  it("have a reason when the mould is gone for good", () => {
    const moulds = easy.moulds.map(({ id }) => ({ id, copies: 0, carryingSeconds: 0, outOfService: [] }));
    const lines = easy.lines.map((line) => ({ ...line, initial: null, workingTime: always }));
    const jobs = [{ ...easyJob, options: [{ lineId: "L0", setupId: "M0/a", secondsPerPiece: 1 }] }];
    expect(reasonsFor({ ...easy, moulds, lines, jobs })).toContain("mould-unavailable");
  });
  it("have a reason when the earliest start lies after the horizon", () => {
    expect(reasonsFor({ ...easy, jobs: [{ ...easyJob, earliestStartAt: easy.horizon.end + 5 }] })).toContain(
      "beyond-horizon",
    );
  });
  it("have a reason when pinned to a line that cannot make them", () => {
    const pins = [{ orderId: easyJob.orderId, lineId: "L1", startAt: null, sequence: null }];
    expect(reasonsFor({ ...easy, pins })).toContain("pin-impossible");
  });
  it("have a reason when pinned to a start at which nobody can run them", () => {
    const line = { ...easy.lines[0]!, freeAt: easy.horizon.start + horizonLength / 2 };
    const pins = [{ orderId: easyJob.orderId, lineId: "L0", startAt: easy.horizon.start, sequence: null }];
    expect(reasonsFor({ ...easy, lines: [line, ...easy.lines.slice(1)], pins })).toContain("pin-impossible");
  });
});

/** Every number in plain data. */
function numbersIn(data: unknown): number[] {
  if (typeof data === "number") return [data];
  return typeof data === "object" && data !== null ? Object.values(data).flatMap(numbersIn) : [];
}

/** The plan passes the audit, and no number or text of the answer is off all scales; gives the result. */
function expectHonest(problem: ProblemData, maxSteps: number): SolveResult {
  const result = solve(problem, { seed: 9, maxSteps, maxMs: null }, stillEnv());
  if (result.status === "planned") expect(auditPlan(problem, result.plan)).toEqual([]);
  expect(result.status).not.toBe("rejected");
  expect(numbersIn(result).filter((each) => !Number.isFinite(each))).toEqual([]);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity/);
  return result;
}

describe("hostile but sound plants", () => {
  const scales = fc.record({
    pieces: fc.constantFrom(1, 1000, 1_000_000_000),
    secondsPerPiece: fc.constantFrom(1e-9, 0.1, 1e6),
    due: fc.constantFrom(-1_000_000_000, 0, 1_000_000_000),
    kg: fc.constantFrom(0, 1e9),
    closed: fc.boolean(),
    noTeams: fc.boolean(),
    hours: fc.constantFrom(null, null, 1, 30),
    mouldsOut: fc.boolean(),
  });
  it("never hang, never give a plan that the audit refuses", () => {
    let planned = 0;
    fc.assert(
      fc.property(problemArb(), scales, (problem, scale) => {
        const hostile: ProblemData = {
          ...problem,
          horizon:
            scale.hours === null
              ? problem.horizon
              : { ...problem.horizon, end: problem.horizon.start + 3600 * scale.hours },
          teams: scale.noTeams ? [] : problem.teams,
          moulds: problem.moulds.map((mould, m) =>
            scale.mouldsOut && m > 0
              ? {
                  ...mould,
                  outOfService: Array.from({ length: mould.copies }, (_copy, copy) => ({
                    copy,
                    ...problem.horizon,
                  })),
                }
              : mould,
          ),
          lines: problem.lines.map((line, l) =>
            scale.closed && l > 0
              ? { ...line, workingTime: { starts: [], ends: [], workedBefore: [] } }
              : line,
          ),
          jobs: problem.jobs.map((job, j) =>
            j % 2 === 0
              ? job
              : {
                  ...job,
                  pieces: scale.pieces,
                  ...(job.lots === undefined
                    ? {}
                    : { lots: { ...job.lots, leastPieces: Math.min(job.lots.leastPieces, scale.pieces) } }),
                  dueAt: job.dueAt + scale.due,
                  sheetKgPerPiece: scale.kg,
                  options: job.options.map((option) => ({
                    ...option,
                    secondsPerPiece: scale.secondsPerPiece,
                  })),
                },
          ),
        };
        if (expectHonest(hostile, 20).status === "planned") planned++;
      }),
      { seed: 61, numRuns: 150 },
    );
    expect(planned).toBeGreaterThan(100);
  });
});
