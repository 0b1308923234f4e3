import type { FormingLine } from "../plant/forming-line.ts";
import { impossibleBy } from "./cycle-fault.ts";
import type { Impossible } from "./cycle-fault.ts";
import { bindingLimit } from "./cycle-limit.ts";
import type { BindingLimit, CycleLimit, LimitCode } from "./cycle-limit.ts";
import { openTimeFaults, openTimeOf } from "./open-time.ts";
import type { OpenTime } from "./open-time.ts";
import { heatingFaults, heatingSeconds, ovenPositions } from "./oven-heating.ts";
import { flowCycleSeconds, shotFaults, shotOf } from "./shot.ts";
import type { Shot, ShotInputs } from "./shot.ts";
import { LONGEST_CYCLE_SECONDS, stabilisingFaults, stabilisingSeconds } from "./stabilising-time.ts";

/** The records that decide a cycle. */
export interface CycleInputs extends ShotInputs {
  readonly line: FormingLine;
}

/** Every part of the cycle in seconds. Heating runs beside the cycle: it is shared among the oven's positions. */
export interface CycleParts {
  readonly formSeconds: number;
  readonly stabiliseSeconds: number;
  readonly trimSeconds: number;
  /** Forming + stabilising + trimming: the mould is shut on the sheet. */
  readonly closedSeconds: number;
  readonly open: OpenTime;
  readonly heatingSeconds: number;
  readonly ovenPositions: number;
}

/** Fastest cycle of a line with a mould, product and sheet, computed from physics, and what holds it. */
export interface MachineCycle {
  readonly kind: "cycle";
  readonly cycleSeconds: number;
  readonly cyclesPerMin: number;
  readonly parts: CycleParts;
  readonly shot: Shot;
  /** Every limit that applies, in a fixed order. */
  readonly limits: readonly [CycleLimit, ...CycleLimit[]];
  readonly limit: BindingLimit;
}

/**
 * The computed cycle: the longest of what each limit allows. Rim rolling stands behind a buffer of stacks, so it never
 * adds to the cycle and holds it only when its own cycle is the longest. Impossible inputs come back as faults, all of
 * them at once; numbers are always finite.
 */
export function machineCycle(inputs: CycleInputs): MachineCycle | Impossible {
  const { line, mould, product, polymer } = inputs;
  const move = { depthMm: mould.depthMm, indexLengthMm: mould.indexLengthMm };
  const stabilising = { wallThicknessMm: product.wallThicknessMm, polymer, mould };
  const impossible = impossibleBy([
    ...shotFaults(inputs),
    ...stabilisingFaults(stabilising),
    ...heatingFaults({ oven: line.oven, indexLengthMm: mould.indexLengthMm }),
    ...openTimeFaults(line.openTime, move),
  ]);
  if (impossible !== null) return impossible;
  const parts = partsOf(inputs);
  const shot = shotOf(inputs);
  const limits = limitsOf(inputs, parts, shot);
  const limit = bindingLimit(limits);
  return (
    tooLong(limit) ?? {
      kind: "cycle",
      cycleSeconds: limit.cycleSeconds,
      cyclesPerMin: 60 / limit.cycleSeconds,
      parts,
      shot,
      limits,
      limit,
    }
  );
}

function partsOf({ line, mould, product, sheet, polymer }: CycleInputs): CycleParts {
  const stabiliseSeconds = stabilisingSeconds({ wallThicknessMm: product.wallThicknessMm, polymer, mould });
  return {
    formSeconds: mould.formSeconds,
    stabiliseSeconds,
    trimSeconds: mould.trimSeconds,
    closedSeconds: mould.formSeconds + stabiliseSeconds + mould.trimSeconds,
    open: openTimeOf(line.openTime, mould),
    heatingSeconds: heatingSeconds({ thicknessMm: sheet.thicknessMm, polymer, oven: line.oven }),
    ovenPositions: ovenPositions(line.oven, mould.indexLengthMm),
  };
}

function limitsOf(
  { line, mould, product }: CycleInputs,
  parts: CycleParts,
  shot: Shot,
): readonly [CycleLimit, ...CycleLimit[]] {
  const open = parts.open.openSeconds;
  const station: CycleLimit = {
    code: "station",
    cycleSeconds: parts.closedSeconds + open,
    sentence: `The mould is closed for ${seconds(parts.closedSeconds)} and open for ${seconds(open)}.`,
  };
  const oven: CycleLimit = {
    code: "oven",
    cycleSeconds: parts.heatingSeconds / parts.ovenPositions,
    sentence: `The sheet needs ${seconds(parts.heatingSeconds)} of heat over ${parts.ovenPositions} oven positions.`,
  };
  const flow = line.extruderFlowKgPerH;
  const rim = product.rimRolled ? line.rimRollingMaxCyclesPerMin : null;
  return [
    station,
    oven,
    ...(flow === null
      ? []
      : [
          {
            code: "sheet-flow" as const,
            cycleSeconds: flowCycleSeconds(shot.sheetKg, flow),
            sentence: `The extruder gives ${flow} kg/h and a shot takes ${shot.sheetKg.toFixed(3)} kg.`,
          },
        ]),
    rateLimit("stacker", line.stackerMaxCyclesPerMin, "The stacker"),
    ...(rim === null ? [] : [rateLimit("rim-rolling", rim, "The rim-rolling unit")]),
    rateLimit("line-dry-cycle", line.maxDryCyclesPerMin, "The line without sheet"),
    rateLimit("mould-cycle", mould.maxCyclesPerMin, "The mould"),
  ];
}

function rateLimit(code: LimitCode, cyclesPerMin: number, who: string): CycleLimit {
  return {
    code,
    cycleSeconds: 60 / cyclesPerMin,
    sentence: `${who} does at most ${cyclesPerMin} cycles/min.`,
  };
}

function seconds(value: number): string {
  return `${value.toFixed(2)} s`;
}

function tooLong(limit: BindingLimit): Impossible | null {
  if (limit.cycleSeconds <= LONGEST_CYCLE_SECONDS) return null;
  return impossibleBy([
    {
      code: "cycle-beyond-an-hour",
      cause: `With these data one cycle would take more than an hour; what holds it: ${limit.code}.`,
      remedy: "Correct the rate, the flow, the contact or the calibration behind this limit.",
      numbers: { longestCycleSeconds: LONGEST_CYCLE_SECONDS },
    },
  ]);
}
