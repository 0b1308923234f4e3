import { NEVER } from "./calendar.ts";
import type { CompiledJobs, CompiledLots, CompiledOptions, CompiledSheets } from "./compiled-problem.ts";
import { lotRuleOf, type LotRule } from "./lot-rule.ts";
import type { Job, JobOption, ProblemData, SheetSupply } from "./problem-data.ts";

/** Working seconds that `pieces` take. */
export function runSeconds(pieces: number, secondsPerPiece: number): number {
  return Math.max(0, Math.ceil(pieces * secondsPerPiece - 1e-9));
}

/** Cycles that a lot of so many pieces takes. */
export function cyclesOf(pieces: number, piecesPerCycle: number): number {
  return Math.ceil(pieces / piecesPerCycle);
}

/** Grams that pieces draw from their sheet, rounded up. */
export function gramsOf(pieces: number, gramsPerPiece: number): number {
  return Math.ceil(pieces * gramsPerPiece - 1e-6);
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

/** [job] options that the pins leave and in which some lot could fit into the horizon at all. */
function keptOptions(data: ProblemData, rules: readonly LotRule[]): (readonly JobOption[])[] {
  const { start, end } = data.horizon;
  const pinned = new Map(data.pins.map((pin) => [pin.orderId, pin.lineId]));
  return data.jobs.map((job, j) => {
    const lineId = pinned.get(job.orderId) ?? null;
    const { leastPieces } = rules[j]!;
    return job.options.filter(
      (option) =>
        (lineId === null || option.lineId === lineId) &&
        runSeconds(leastPieces, option.secondsPerPiece) <= end - start,
    );
  });
}

/** The options of all lots: those of its job for each. */
function compileOptions(
  data: ProblemData,
  jobOfLot: readonly number[],
  kept: readonly (readonly JobOption[])[],
): CompiledOptions {
  const lineIndex = new Map(data.lines.map((line, l) => [line.id, l]));
  const setupIndex = new Map(data.setups.map((setup, s) => [setup.id, s]));
  const { start } = data.horizon;
  const count = jobOfLot.reduce((sum, j) => sum + kept[j]!.length, 0);
  const options = {
    count,
    job: new Int32Array(count),
    lot: new Int32Array(count),
    line: new Int32Array(count),
    setup: new Int32Array(count),
    seconds: new Int32Array(count),
    secondsPerPiece: new Float64Array(count),
    piecesPerCycle: new Float64Array(count),
    availableFrom: new Int32Array(count),
  };
  let at = 0;
  jobOfLot.forEach((j, lot) => {
    const { pieces } = data.jobs[j]!;
    for (const option of kept[j]!) {
      options.job[at] = j;
      options.lot[at] = lot;
      options.line[at] = lineIndex.get(option.lineId)!;
      options.setup[at] = setupIndex.get(option.setupId)!;
      options.seconds[at] = Math.min(NEVER, runSeconds(pieces, option.secondsPerPiece));
      options.secondsPerPiece[at] = option.secondsPerPiece;
      options.piecesPerCycle[at] = option.piecesPerCycle ?? 1;
      options.availableFrom[at] = Math.max(0, Math.min(NEVER, (option.availableFromAt ?? 0) - start));
      at++;
    }
  });
  return options;
}

/** The lots that jobs may be made in; the options of a job are those of each of its lots. */
function compileLots(
  data: ProblemData,
  rules: readonly LotRule[],
  kept: readonly (readonly JobOption[])[],
): { readonly lots: CompiledLots; readonly options: CompiledOptions } {
  const startAt = new Map(data.pins.map((pin) => [pin.orderId, pin.startAt]));
  const job = rules.flatMap(({ most }, j) => Array.from({ length: most }, () => j));
  const firstLot = firstOfEach(rules.map(({ most }) => most));
  const lots: CompiledLots = {
    count: job.length,
    job: Int32Array.from(job),
    firstLot,
    firstOption: firstOfEach(job.map((j) => kept[j]!.length)),
    fixedStart: Int32Array.from(job, (j, lot) => {
      const at = startAt.get(data.jobs[j]!.orderId) ?? null;
      return at === null || lot !== firstLot[j] ? -1 : Math.min(NEVER, at - data.horizon.start);
    }),
    leastPieces: Float64Array.from(rules, ({ leastPieces }) => leastPieces),
    unitPieces: Float64Array.from(rules, ({ unitPieces }) => unitPieces),
  };
  return { lots, options: compileOptions(data, job, kept) };
}

/** Running sums of counts, 0 first. */
function firstOfEach(counts: readonly number[]): Int32Array {
  const first = new Int32Array(counts.length + 1);
  counts.forEach((count, i) => {
    first[i + 1] = first[i]! + count;
  });
  return first;
}

/** Jobs, their lots and options, and the sheets that may run short. */
export function compileJobs(data: ProblemData): {
  readonly jobs: CompiledJobs;
  readonly lots: CompiledLots;
  readonly options: CompiledOptions;
  readonly sheets: CompiledSheets;
} {
  const origin = data.horizon.start;
  const rules = data.jobs.map(lotRuleOf);
  const { lots, options } = compileLots(data, rules, keptOptions(data, rules));
  const steps = data.sheets.map((sheet) => supplySteps(sheet, origin));
  const sheets = { count: steps.length, at: steps.map((s) => s.at), grams: steps.map((s) => s.grams) };
  const sheetIndex = new Map(data.sheets.map((sheet, s) => [sheet.id, s]));
  const pick = (of: (job: Job, j: number) => number): Float64Array => Float64Array.from(data.jobs, of);
  const gramsPerPiece = pick((job) => job.sheetKgPerPiece * 1000);
  const grams = pick((job, j) => gramsOf(job.pieces, gramsPerPiece[j]!));
  const namedSheet = data.jobs.map((job) => {
    const sheet = job.sheetId === null ? undefined : sheetIndex.get(job.sheetId);
    return sheet === undefined || data.sheets[sheet]!.stockKg === null ? -1 : sheet;
  });
  const demand = new Float64Array(steps.length);
  namedSheet.forEach((sheet, j) => {
    // each lot is rounded up by itself
    if (sheet >= 0) demand[sheet]! += grams[j]! + rules[j]!.most - 1;
  });
  const lineIndex = new Map(data.lines.map((line, l) => [line.id, l]));
  const alwaysThere = steps.map(({ grams: there }, s) => there[0]! >= demand[s]!);
  const pins = new Map(data.pins.map((pin) => [pin.orderId, pin]));
  const { tardinessPerWeightHour, lateOrderPerWeight, unplannedPerWeight } = data.objective;
  const jobs: CompiledJobs = {
    count: data.jobs.length,
    due: pick((job) => job.dueAt - origin - job.conditioningSeconds),
    release: Int32Array.from(data.jobs, (job, j) => {
      const sheet = namedSheet[j]!;
      const least = gramsOf(rules[j]!.leastPieces, gramsPerPiece[j]!);
      const sheetAt = sheet < 0 ? 0 : supplyInstant(sheets, sheet, least);
      return Math.max(0, sheetAt, Math.min(NEVER, job.earliestStartAt - origin));
    }),
    latestStart: Int32Array.from(data.jobs, ({ latestStartAt }) =>
      latestStartAt === undefined ? NEVER - 1 : Math.max(-NEVER, Math.min(NEVER - 1, latestStartAt - origin)),
    ),
    weight: pick((job) => job.weight),
    holdingWeight: pick((job) => job.holdingWeight ?? 0),
    earlyPerSecond: pick((job) => ((job.holdingWeight ?? 0) * data.objective.earlinessPerWeightHour) / 3600),
    publishedLines: data.jobs.map(({ published }) =>
      (published?.lineIds ?? []).map((id) => lineIndex.get(id) ?? data.lines.length),
    ),
    publishedStart: Int32Array.from(data.jobs, (job) =>
      Math.max(-NEVER, Math.min(NEVER, (job.published?.startAt ?? origin) - origin)),
    ),
    latePerSecond: pick((job) => (job.weight * tardinessPerWeightHour) / 3600),
    lateOnce: pick((job) => job.weight * lateOrderPerWeight),
    unplanned: pick((job) => job.weight * unplannedPerWeight),
    sheet: Int32Array.from(namedSheet, (sheet) => (sheet < 0 || alwaysThere[sheet] ? -1 : sheet)),
    grams,
    gramsPerPiece,
    pieces: pick((job) => job.pieces),
    fixedStart: Int32Array.from(data.jobs, (_, j) => lots.fixedStart[lots.firstLot[j]!]!),
    rank: Int32Array.from(data.jobs, (job) => pins.get(job.orderId)?.sequence ?? -1),
    firstOption: Int32Array.from(lots.firstLot, (lot) => lots.firstOption[lot]!),
  };
  return { jobs, lots, options, sheets };
}
