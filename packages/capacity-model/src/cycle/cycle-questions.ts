import { bindingLimit, slowestFirst } from "./cycle-limit.ts";
import type { BindingLimit, CycleLimit, LimitCode } from "./cycle-limit.ts";
import type { CycleInputs, MachineCycle } from "./machine-cycle.ts";
import { flowCycleSeconds } from "./shot.ts";

/** The cycle as it would be with one limit out of the way. */
export interface CycleWithout {
  readonly without: LimitCode;
  readonly cycleSeconds: number;
  readonly cyclesPerMin: number;
  /** Share of cycles per minute gained; 0 when that limit did not bind alone. */
  readonly gainShare: number;
  readonly limit: BindingLimit;
}

/** What the cycle would be without a limit (the binding one when not named); null when it is the only limit or does not apply. */
export function cycleWithout(cycle: MachineCycle, code: LimitCode = cycle.limit.code): CycleWithout | null {
  const [first, ...others] = cycle.limits.filter((limit) => limit.code !== code);
  if (first === undefined || others.length + 1 === cycle.limits.length) return null;
  const limit = bindingLimit([first, ...others]);
  return {
    without: code,
    cycleSeconds: limit.cycleSeconds,
    cyclesPerMin: 60 / limit.cycleSeconds,
    gainShare: cycle.cycleSeconds / limit.cycleSeconds - 1,
    limit,
  };
}

/** A limit that stands against a wanted rate and how much shorter its own cycle would have to be. */
export interface RateObstacle {
  readonly limit: CycleLimit;
  readonly secondsTooLong: number;
  readonly shareTooLong: number;
}

/** Every limit that must yield before `cyclesPerMin` is reached, slowest first; empty when the computed cycle reaches it. */
export function obstaclesTo(cycle: MachineCycle, cyclesPerMin: number): readonly RateObstacle[] {
  const wantedSeconds = 60 / cyclesPerMin;
  return slowestFirst(cycle.limits)
    .filter((limit) => limit.cycleSeconds > wantedSeconds)
    .map((limit) => ({
      limit,
      secondsTooLong: limit.cycleSeconds - wantedSeconds,
      shareTooLong: limit.cycleSeconds / wantedSeconds - 1,
    }));
}

/** What a wanted rate needs of the line and mould, the rest left as it is. */
export interface NeedsOfRate {
  /** Longest closed time that leaves room for the open time; 0 or below: the open time alone is too long. */
  readonly longestClosedSeconds: number;
  readonly ovenPositions: number;
  readonly heatedLengthMm: number;
  readonly sheetFlowKgPerH: number;
}

/** Closed time, oven length and sheet flow that `cyclesPerMin` (positive) needs with this mould and sheet. */
export function needsOfRate(
  cycle: MachineCycle,
  { mould }: Pick<CycleInputs, "mould">,
  cyclesPerMin: number,
): NeedsOfRate {
  const wantedSeconds = 60 / cyclesPerMin;
  const positions = Math.max(1, Math.ceil(cycle.parts.heatingSeconds / wantedSeconds - 1e-9));
  return {
    longestClosedSeconds: wantedSeconds - cycle.parts.open.openSeconds,
    ovenPositions: positions,
    heatedLengthMm: positions * mould.indexLengthMm,
    // kilograms per hour and seconds per shot trade places in 3600·m/Q
    sheetFlowKgPerH: flowCycleSeconds(cycle.shot.sheetKg, wantedSeconds),
  };
}
