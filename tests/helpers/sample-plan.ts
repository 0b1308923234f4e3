import { workingTimeOf } from "@formweek/capacity-model";
import type { ObjectiveTerm, Plan, ProblemData } from "@formweek/scheduler";

/** Instant of a day (0-based) and clock time; the sample's horizon starts at 0, midnight of day 0. */
export function at(day: number, hour: number, minute = 0): number {
  return ((day * 24 + hour) * 60 + minute) * 60;
}

const days = [0, 1, 2, 3, 4, 5, 6];
const lineHours = workingTimeOf(days.map((day) => [at(day, 6), at(day, 22)] as const));
/** Setters work 06:00–14:00 with a break from 10:00 to 10:30. */
const teamHours = workingTimeOf(
  days.flatMap((day) => [[at(day, 6), at(day, 10)] as const, [at(day, 10, 30), at(day, 14)] as const]),
);
/** One operator all day, a second one away from 12:00 to 14:00. */
const secondOperator = workingTimeOf(
  days.flatMap((day) => [[at(day, 6), at(day, 12)] as const, [at(day, 14), at(day, 22)] as const]),
);

const line = {
  workingTime: lineHours,
  changeClassId: "all",
  trolleyId: "trolley",
  poolId: "operators",
  operatorsHundredths: 100,
  restartLimitSeconds: 4 * 3600,
  restartWarmUpSeconds: 600,
  freeAt: 0,
};
const job = {
  productId: "cup",
  earliestStartAt: 0,
  dueAt: at(2, 0),
  weight: 1,
  conditioningSeconds: 0,
  sheetId: "white",
  sheetKgPerPiece: 0.03,
  refusals: [],
};

/** Three lines, two moulds of one copy, one team, one trolley, five orders: small, with every timing rule in play. */
export const sampleProblem: ProblemData = {
  horizon: { start: 0, end: at(7, 0) },
  lines: [
    { ...line, id: "L1", initial: { setupId: "m1-white", copy: 0 } },
    { ...line, id: "L2", initial: { setupId: "m2-white", copy: 0 } },
    { ...line, id: "L3", initial: null },
  ],
  moulds: [
    {
      id: "M1",
      copies: 1,
      carryingSeconds: 1200,
      outOfService: [{ copy: 0, start: at(5, 0), end: at(6, 0) }],
    },
    { id: "M2", copies: 1, carryingSeconds: 1200, outOfService: [] },
  ],
  setups: [
    { id: "bare", mouldId: null, sheetId: "white", strippedId: "bare" },
    { id: "m1-white", mouldId: "M1", sheetId: "white", strippedId: "bare" },
    { id: "m2-white", mouldId: "M2", sheetId: "white", strippedId: "bare" },
    { id: "m1-red", mouldId: "M1", sheetId: "red", strippedId: "bare" },
  ],
  changeClasses: [
    {
      id: "all",
      matrix: [
        [-1, 2, 2, 2],
        [1, -1, 0, 3],
        [1, 0, -1, 0],
        [1, 3, 0, -1],
      ],
    },
  ],
  changes: [
    {
      dismountSeconds: 1800,
      mountSeconds: 3600,
      tailSeconds: 900,
      usesTrolley: true,
      scrapKg: 5,
    },
    {
      dismountSeconds: 1800,
      mountSeconds: 0,
      tailSeconds: 0,
      usesTrolley: true,
      scrapKg: 0,
    },
    {
      dismountSeconds: 0,
      mountSeconds: 3600,
      tailSeconds: 900,
      usesTrolley: true,
      scrapKg: 5,
    },
    { dismountSeconds: 0, mountSeconds: 0, tailSeconds: 600, usesTrolley: false, scrapKg: 2 },
  ],
  teams: [
    { id: "early", workingTime: teamHours },
    { id: "other", workingTime: teamHours },
  ],
  trolleys: [{ id: "trolley" }, { id: "spare" }],
  pools: [
    {
      id: "operators",
      crews: [
        { workingTime: lineHours, hundredths: 100 },
        { workingTime: secondOperator, hundredths: 100 },
      ],
    },
  ],
  sheets: [
    { id: "white", stockKg: 100, arrivals: [] },
    { id: "red", stockKg: 100, arrivals: [{ at: at(0, 8), kg: 200 }] },
  ],
  jobs: [
    {
      ...job,
      orderId: "A",
      pieces: 1000,
      options: [{ lineId: "L1", setupId: "m1-white", secondsPerPiece: 7.2 }],
    },
    {
      ...job,
      orderId: "B",
      pieces: 8000,
      dueAt: at(1, 8, 20),
      weight: 2,
      conditioningSeconds: 3600,
      sheetId: "red",
      options: [{ lineId: "L1", setupId: "m1-red", secondsPerPiece: 7.2 }],
    },
    {
      ...job,
      orderId: "C",
      pieces: 500,
      earliestStartAt: at(1, 11),
      options: [{ lineId: "L2", setupId: "m1-white", secondsPerPiece: 7.2, availableFromAt: at(1, 8) }],
      refusals: [{ lineId: "L3", mouldId: "M1", code: "depth", text: "110 mm deep, the line takes 100 mm" }],
    },
    {
      ...job,
      orderId: "D",
      pieces: 1000,
      options: [{ lineId: "L3", setupId: "m2-white", secondsPerPiece: 3.6 }],
    },
    { ...job, orderId: "E", pieces: 10, weight: 3, options: [] },
  ],
  pins: [
    { orderId: "A", lineId: "L1", startAt: at(0, 6), sequence: 1 },
    { orderId: "B", lineId: null, startAt: null, sequence: 2 },
  ],
  changeAwaitsEarliestStart: false,
  objective: {
    tardinessPerWeightHour: 10,
    lateOrderPerWeight: 20,
    changePerMachineHour: 30,
    changePerTeamHour: 12,
    scrapPerKg: 2,
    unplannedPerWeight: 1000,
    makespanPerHour: 6,
  },
};

const m1 = { mouldId: "M1", copy: 0 };
const m2 = { mouldId: "M2", copy: 0 };

function term(
  name: ObjectiveTerm["name"],
  unit: string,
  [amount, price]: readonly [number, number],
): ObjectiveTerm {
  return { name, unit, amount, price, cost: amount * price };
}

/**
 * A valid plan of the sample, worked out by hand. L1: A, a sheet change, B over the night with warm-up, then stripped so
 * that L2 can have the mould: the setters' break lies in its mounting. L3: D, paused while one operator is away.
 */
export const samplePlan: Plan = {
  segments: [
    {
      kind: "run",
      lineId: "L1",
      start: at(0, 6),
      end: at(0, 8),
      orderId: "A",
      lot: 0,
      productId: "cup",
      setupId: "m1-white",
      mould: m1,
      pieces: 1000,
    },
    {
      kind: "change",
      lineId: "L1",
      start: at(0, 8),
      mountStart: at(0, 8),
      tailStart: at(0, 8),
      end: at(0, 8, 10),
      fromSetupId: "m1-white",
      toSetupId: "m1-red",
      changeSpec: 3,
      stripping: false,
      teamId: null,
      trolleyId: null,
      mouldOut: null,
      mouldIn: null,
    },
    // 49,800 s at 7.2 s a piece: 6,916 whole pieces; the remaining 1,084 take 7,800 s.
    {
      kind: "run",
      lineId: "L1",
      start: at(0, 8, 10),
      end: at(0, 22),
      orderId: "B",
      lot: 0,
      productId: "cup",
      setupId: "m1-red",
      mould: m1,
      pieces: 6916,
    },
    { kind: "stop", lineId: "L1", start: at(0, 22), end: at(1, 6), reason: "closed", orderId: "B", lot: 0 },
    {
      kind: "stop",
      lineId: "L1",
      start: at(1, 6),
      end: at(1, 6, 10),
      reason: "warm-up",
      orderId: "B",
      lot: 0,
    },
    {
      kind: "run",
      lineId: "L1",
      start: at(1, 6, 10),
      end: at(1, 8, 20),
      orderId: "B",
      lot: 0,
      productId: "cup",
      setupId: "m1-red",
      mould: m1,
      pieces: 1084,
    },
    {
      kind: "change",
      lineId: "L1",
      start: at(1, 8, 20),
      mountStart: at(1, 8, 50),
      tailStart: at(1, 8, 50),
      end: at(1, 8, 50),
      fromSetupId: "m1-red",
      toSetupId: "bare",
      changeSpec: 1,
      stripping: true,
      teamId: "early",
      trolleyId: "trolley",
      mouldOut: m1,
      mouldIn: null,
    },
    {
      kind: "change",
      lineId: "L2",
      start: at(1, 8, 50),
      mountStart: at(1, 9, 20),
      tailStart: at(1, 10, 50),
      end: at(1, 11, 5),
      fromSetupId: "m2-white",
      toSetupId: "m1-white",
      changeSpec: 0,
      stripping: false,
      teamId: "early",
      trolleyId: "trolley",
      mouldOut: m2,
      mouldIn: m1,
    },
    {
      kind: "run",
      lineId: "L2",
      start: at(1, 11, 5),
      end: at(1, 12, 5),
      orderId: "C",
      lot: 0,
      productId: "cup",
      setupId: "m1-white",
      mould: m1,
      pieces: 500,
    },
    {
      kind: "run",
      lineId: "L3",
      start: at(1, 11, 30),
      end: at(1, 12),
      orderId: "D",
      lot: 0,
      productId: "cup",
      setupId: "m2-white",
      mould: m2,
      pieces: 500,
    },
    {
      kind: "stop",
      lineId: "L3",
      start: at(1, 12),
      end: at(1, 12, 5),
      reason: "operators",
      orderId: "D",
      lot: 0,
    },
    {
      kind: "run",
      lineId: "L3",
      start: at(1, 12, 5),
      end: at(1, 12, 35),
      orderId: "D",
      lot: 0,
      productId: "cup",
      setupId: "m2-white",
      mould: m2,
      pieces: 500,
    },
  ],
  lots: [
    {
      orderId: "A",
      lot: 0,
      lineId: "L1",
      setupId: "m1-white",
      pieces: 1000,
      start: at(0, 6),
      end: at(0, 8),
      finish: at(0, 8),
    },
    {
      orderId: "B",
      lot: 0,
      lineId: "L1",
      setupId: "m1-red",
      pieces: 8000,
      start: at(0, 8, 10),
      end: at(1, 8, 20),
      finish: at(1, 9, 20),
    },
    {
      orderId: "C",
      lot: 0,
      lineId: "L2",
      setupId: "m1-white",
      pieces: 500,
      start: at(1, 11, 5),
      end: at(1, 12, 5),
      finish: at(1, 12, 5),
    },
    {
      orderId: "D",
      lot: 0,
      lineId: "L3",
      setupId: "m2-white",
      pieces: 1000,
      start: at(1, 11, 30),
      end: at(1, 12, 35),
      finish: at(1, 12, 35),
    },
  ],
  unplanned: [{ orderId: "E", reasons: [{ code: "no-line-fits", lineId: null, text: "No line fits." }] }],
  objective: {
    terms: [
      // B has weight 2 and is an hour late.
      term("weighted tardiness", "weight × h", [2, 10]),
      term("late orders", "weight", [2, 20]),
      // 600 s + 1,800 s + 6,300 s of change, 1,800 s + 5,400 s of it by the team.
      term("change time", "h", [8700 / 3600, 30]),
      term("team time", "h", [2, 12]),
      term("start-up scrap", "kg", [7, 2]),
      term("unplanned orders", "weight", [3, 1000]),
      // D ends at 12:35 of day 1.
      term("makespan", "h", [131_700 / 3600, 6]),
    ],
    total: 20 + 40 + 72.5 + 24 + 14 + 3000 + 219.5,
  },
};
