import { workingTimeOf } from "@formweek/capacity-model";
import type { Job, ProblemData, ProblemLine } from "@formweek/scheduler";
import { NO_TERMS } from "./no-terms.ts";

export const HOUR = 3600;
export const DAY = 24 * HOUR;

/** A line that is always open and bare. */
export function lineOf(id: string, part: Partial<ProblemLine> = {}): ProblemLine {
  return {
    id,
    workingTime: workingTimeOf([[0, 10 * DAY]]),
    changeClassId: "C",
    trolleyId: null,
    poolId: null,
    operatorsHundredths: 0,
    restartLimitSeconds: 0,
    restartWarmUpSeconds: 0,
    initial: { setupId: "bare", copy: null },
    freeAt: 0,
    ...part,
  };
}

/** One hour of work on one line with one set-up. */
export function jobOf(orderId: string, lineId: string, setupId: string, part: Partial<Job> = {}): Job {
  return {
    orderId,
    productId: orderId,
    pieces: 3600,
    dueAt: 10 * DAY,
    earliestStartAt: 0,
    weight: 1,
    conditioningSeconds: 0,
    sheetId: null,
    sheetKgPerPiece: 0.1,
    options: [{ lineId, setupId, secondsPerPiece: 1 }],
    refusals: [],
    ...part,
  };
}

/** Moulds A and B, one copy each; out 1 h, in 2 h, tail 1 h. */
export function twoMouldPlant(part: Partial<ProblemData>): ProblemData {
  const spec = { usesTrolley: false, scrapKg: 0 };
  return {
    horizon: { start: 0, end: 10 * DAY },
    lines: [lineOf("1"), lineOf("2")],
    moulds: ["A", "B"].map((id) => ({ id, copies: 1, carryingSeconds: 600, outOfService: [] })),
    setups: [
      { id: "bare", mouldId: null, sheetId: null, strippedId: "bare" },
      { id: "A", mouldId: "A", sheetId: null, strippedId: "bare" },
      { id: "B", mouldId: "B", sheetId: null, strippedId: "bare" },
    ],
    changeClasses: [
      {
        id: "C",
        matrix: [
          [-1, 1, 1],
          [0, -1, 2],
          [0, 2, -1],
        ],
      },
    ],
    changes: [
      { ...spec, dismountSeconds: HOUR, mountSeconds: 0, tailSeconds: 0 },
      { ...spec, dismountSeconds: 0, mountSeconds: 2 * HOUR, tailSeconds: HOUR },
      { ...spec, dismountSeconds: HOUR, mountSeconds: 2 * HOUR, tailSeconds: HOUR },
    ],
    teams: [{ id: "setters", workingTime: workingTimeOf([[0, 10 * DAY]]) }],
    trolleys: [{ id: "T" }],
    pools: [],
    sheets: [],
    jobs: [],
    pins: [],
    changeAwaitsEarliestStart: false,
    objective: {
      tardinessPerWeightHour: 10,
      lateOrderPerWeight: 0,
      changePerMachineHour: 1,
      changePerTeamHour: 1,
      scrapPerKg: 0,
      ...NO_TERMS,
      unplannedPerWeight: 1e6,
      makespanPerHour: 0,
    },
    ...part,
  };
}
