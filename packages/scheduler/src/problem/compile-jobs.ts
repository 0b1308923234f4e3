import { NEVER } from "./calendar.ts";
import type { CompiledJobs, CompiledOptions, CompiledSheets } from "./compiled-problem.ts";
import type { Job, ProblemData, SheetSupply } from "./problem-data.ts";

/** Working seconds that `pieces` take. */
export function runSeconds(pieces: number, secondsPerPiece: number): number {
  return Math.max(0, Math.ceil(pieces * secondsPerPiece - 1e-9));
}

/** Grams a job draws from its sheet, rounded up. */
function gramsOf(job: Job): number {
  return Math.ceil(job.pieces * job.sheetKgPerPiece * 1000 - 1e-6);
}

function supplySteps(supply: SheetSupply, origin: number): { at: Int32Array; grams: Float64Array } {
  const arrivals = supply.arrivals
    .map(({ at, kg }) => ({ at: Math.max(0, Math.min(NEVER, at - origin)), kg }))
    .filter(({ at }) => at < NEVER)
    .sort((a, b) => a.at - b.at);
  let kg = supply.stockKg ?? 0;
  const sums = arrivals.map((arrival) => (kg += arrival.kg));
  return {
    at: Int32Array.from([0, ...arrivals.map(({ at }) => at)]),
    grams: Float64Array.from([supply.stockKg ?? 0, ...sums], (sum) => Math.floor(sum * 1000 + 1e-6)),
  };
}

/** First instant from which at least `grams` have arrived in all; NEVER when they never do. O(arrivals). */
export function supplyInstant(sheets: CompiledSheets, sheet: number, grams: number): number {
  const there = sheets.grams[sheet]!;
  for (let i = 0; i < there.length; i++) if (there[i]! >= grams) return sheets.at[sheet]![i]!;
  return NEVER;
}

interface KeptOption {
  readonly job: number;
  readonly line: number;
  readonly setup: number;
  readonly seconds: number;
  readonly secondsPerPiece: number;
  readonly availableFrom: number;
}

/** Options that the pins leave and that could fit into the horizon at all. */
function keptOptions(data: ProblemData, horizon: number): KeptOption[][] {
  const lineIndex = new Map(data.lines.map((line, l) => [line.id, l]));
  const setupIndex = new Map(data.setups.map((setup, s) => [setup.id, s]));
  const pinned = new Map(data.pins.map((pin) => [pin.orderId, pin.lineId]));
  return data.jobs.map((job, j) => {
    const lineId = pinned.get(job.orderId) ?? null;
    return job.options
      .filter((option) => lineId === null || option.lineId === lineId)
      .map((option) => ({
        job: j,
        line: lineIndex.get(option.lineId)!,
        setup: setupIndex.get(option.setupId)!,
        seconds: runSeconds(job.pieces, option.secondsPerPiece),
        secondsPerPiece: option.secondsPerPiece,
        availableFrom: Math.max(0, Math.min(NEVER, (option.availableFromAt ?? 0) - data.horizon.start)),
      }))
      .filter((option) => option.seconds <= horizon);
  });
}

/** Jobs, their options, and the sheets that may run short. */
export function compileJobs(
  data: ProblemData,
  horizon: number,
): { readonly jobs: CompiledJobs; readonly options: CompiledOptions; readonly sheets: CompiledSheets } {
  const origin = data.horizon.start;
  const steps = data.sheets.map((sheet) => supplySteps(sheet, origin));
  const sheets = { count: steps.length, at: steps.map((s) => s.at), grams: steps.map((s) => s.grams) };
  const sheetIndex = new Map(data.sheets.map((sheet, s) => [sheet.id, s]));
  const grams = Float64Array.from(data.jobs, gramsOf);
  const namedSheet = data.jobs.map((job) => {
    const sheet = job.sheetId === null ? undefined : sheetIndex.get(job.sheetId);
    return sheet === undefined || data.sheets[sheet]!.stockKg === null ? -1 : sheet;
  });
  const demand = new Float64Array(steps.length);
  namedSheet.forEach((sheet, j) => {
    if (sheet >= 0) demand[sheet]! += grams[j]!;
  });
  const alwaysThere = steps.map(({ grams: there }, s) => there[0]! >= demand[s]!);
  const perJob = keptOptions(data, horizon);
  const flat = perJob.flat();
  const firstOption = new Int32Array(data.jobs.length + 1);
  perJob.forEach((options, j) => {
    firstOption[j + 1] = firstOption[j]! + options.length;
  });
  const pins = new Map(data.pins.map((pin) => [pin.orderId, pin]));
  const { tardinessPerWeightHour, lateOrderPerWeight, unplannedPerWeight } = data.objective;
  const pick = (of: (job: Job, j: number) => number): Float64Array => Float64Array.from(data.jobs, of);
  const jobs: CompiledJobs = {
    count: data.jobs.length,
    due: pick((job) => job.dueAt - origin - job.conditioningSeconds),
    release: Int32Array.from(data.jobs, (job, j) => {
      const sheet = namedSheet[j]!;
      const sheetAt = sheet < 0 ? 0 : supplyInstant(sheets, sheet, grams[j]!);
      return Math.max(0, sheetAt, Math.min(NEVER, job.earliestStartAt - origin));
    }),
    weight: pick((job) => job.weight),
    latePerSecond: pick((job) => (job.weight * tardinessPerWeightHour) / 3600),
    lateOnce: pick((job) => job.weight * lateOrderPerWeight),
    unplanned: pick((job) => job.weight * unplannedPerWeight),
    sheet: Int32Array.from(namedSheet, (sheet) => (sheet < 0 || alwaysThere[sheet] ? -1 : sheet)),
    grams,
    fixedStart: Int32Array.from(data.jobs, (job) => {
      const startAt = pins.get(job.orderId)?.startAt ?? null;
      return startAt === null ? -1 : Math.min(NEVER, startAt - origin);
    }),
    rank: Int32Array.from(data.jobs, (job) => pins.get(job.orderId)?.sequence ?? -1),
    firstOption,
  };
  const options = {
    count: flat.length,
    job: Int32Array.from(flat, (option) => option.job),
    line: Int32Array.from(flat, (option) => option.line),
    setup: Int32Array.from(flat, (option) => option.setup),
    seconds: Int32Array.from(flat, (option) => option.seconds),
    secondsPerPiece: Float64Array.from(flat, (option) => option.secondsPerPiece),
    availableFrom: Int32Array.from(flat, (option) => option.availableFrom),
  };
  return { jobs, options, sheets };
}
