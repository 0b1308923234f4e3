import { addWork, NEVER, nextOpen, workedBefore, type Calendar } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { UnplannedOrder, UnplannedReason } from "../plan/plan.ts";
import { runSeconds, supplyInstant } from "../problem/compile-jobs.ts";
import { lotRuleOf } from "../problem/lot-rule.ts";
import { Decoder } from "../timing/decoder.ts";
import { runEnd } from "../timing/run-timing.ts";
import { emptySequences } from "../timing/sequences.ts";
import { finish, type Work } from "../work/work.ts";
import { misfitReason, reasonOf } from "./unplanned-words.ts";

/** Orders explained between two pauses. */
const ORDERS_PER_PAUSE = 100;

function hoursAfter(calendar: Calendar, t: number): number {
  return t >= NEVER ? 0 : calendar.total - workedBefore(calendar, t);
}

/** True when some team's hours hold this much work from t on. */
function teamCanDo(problem: CompiledProblem, t: number, work: number): boolean {
  return problem.teams.some((team) => addWork(team, nextOpen(team, t), work) < NEVER);
}

/** The first rule that refuses one option of an order by itself, as if the plant were empty; null when none does. */
function refusalAlone(problem: CompiledProblem, job: number, option: number): UnplannedReason | null {
  const { jobs, options, lines, moulds, setups, data } = problem;
  const line = options.line[option]!;
  const lineId = data.lines[line]!.id;
  const setup = options.setup[option]!;
  const mould = setups.mould[setup]!;
  const seconds = options.seconds[option]!;
  const release = Math.max(jobs.release[job]!, options.availableFrom[option]!);
  if (mould >= 0 && moulds.firstCopy[mould] === moulds.firstCopy[mould + 1]) {
    return reasonOf("mould-unavailable", lineId, { kind: "no mould copy", mouldId: data.moulds[mould]!.id });
  }
  const from = Math.max(lines.freeAt[line]!, release);
  const left = hoursAfter(lines.calendar[line]!, from);
  if (left < seconds) {
    return reasonOf("line-never-open-long-enough", lineId, {
      kind: "line open too short",
      runSeconds: seconds,
      leftSeconds: left,
    });
  }
  const manned = hoursAfter(lines.runCalendar[line]!, from);
  if (manned < seconds) {
    return reasonOf("no-operators", lineId, {
      kind: "operators too short",
      runSeconds: seconds,
      leftSeconds: manned,
    });
  }
  const { changes } = problem;
  const initial = lines.initialSetup[line]!;
  const spec =
    initial < 0
      ? -1
      : changes.matrix[
          (lines.changeClass[line]! * changes.setupCount + initial) * changes.setupCount + setup
        ]!;
  if (
    spec >= 0 &&
    changes.teamWork[spec]! > 0 &&
    !teamCanDo(problem, lines.freeAt[line]!, changes.teamWork[spec]!)
  ) {
    return reasonOf("no-team-hours", lineId, {
      kind: "setters too short",
      workSeconds: changes.teamWork[spec]!,
    });
  }
  const fixed = jobs.fixedStart[job]!;
  if (fixed >= 0) {
    if (fixed < from) {
      return reasonOf("pin-impossible", lineId, { kind: "pinned too early", bySeconds: from - fixed });
    }
    if (nextOpen(lines.runCalendar[line]!, fixed) !== fixed) {
      return reasonOf("pin-impossible", lineId, { kind: "pinned to closed time" });
    }
  }
  const start = nextOpen(lines.runCalendar[line]!, Math.max(from, fixed));
  if (start >= NEVER || runEnd(problem, line, start, seconds) >= NEVER) {
    return reasonOf("beyond-horizon", lineId, { kind: "ends after horizon", runSeconds: seconds });
  }
  return null;
}

/**
 * The option would start after its order's latest start behind all that the decoder timed last, which `where` names; null when
 * it would not, or when another rule refuses it there.
 */
function startsTooLate(
  decoder: Decoder,
  option: number,
  where: "alone" | "behind others",
): UnplannedReason | null {
  const { data, jobs, options, origin } = decoder.problem;
  const job = options.job[option]!;
  const { latestStartAt } = data.jobs[job]!;
  if (latestStartAt === undefined) return null;
  const start = decoder.startBehind(option);
  const late = origin + start - latestStartAt;
  if (start >= NEVER || late <= 0) return null;
  return reasonOf("starts-too-late", data.lines[options.line[option]!]!.id, {
    kind: "starts too late",
    bySeconds: late,
    where: jobs.fixedStart[job]! >= 0 ? "pinned" : where,
  });
}

/** The line is fit for the order, but the others leave no room for it. */
function refusalInPlan(decoder: Decoder, job: number, option: number): UnplannedReason {
  const { problem } = decoder;
  const line = problem.options.line[option]!;
  const lineId = problem.data.lines[line]!.id;
  if (problem.jobs.fixedStart[job]! >= 0) {
    return reasonOf("pin-impossible", lineId, { kind: "pinned start taken" });
  }
  const seconds = problem.options.seconds[option]!;
  const free = Math.max(decoder.ledger.lineFree[line]!, problem.jobs.release[job]!);
  const left = hoursAfter(problem.lines.runCalendar[line]!, free);
  return reasonOf("beyond-horizon", lineId, {
    kind: "no time left",
    runSeconds: seconds,
    leftSeconds: left,
  });
}

/** Runs that are longer than the horizon, or on lines that a pin excludes, were never options of the search. */
function refusalsBeforeSearch(problem: CompiledProblem, job: number): UnplannedReason[] {
  const { data } = problem;
  const record = data.jobs[job]!;
  const pinnedLine = data.pins.find((pin) => pin.orderId === record.orderId)?.lineId ?? null;
  const reasons: UnplannedReason[] = [];
  for (const option of record.options) {
    if (pinnedLine !== null && option.lineId !== pinnedLine) continue;
    const seconds = runSeconds(lotRuleOf(record).leastPieces, option.secondsPerPiece);
    if (seconds <= problem.horizon) continue;
    reasons.push(
      reasonOf("line-never-open-long-enough", option.lineId, {
        kind: "longer than horizon",
        runSeconds: seconds,
        horizonSeconds: problem.horizon,
      }),
    );
  }
  if (
    pinnedLine !== null &&
    record.options.length > 0 &&
    !record.options.some((option) => option.lineId === pinnedLine)
  ) {
    reasons.push(reasonOf("pin-impossible", pinnedLine, { kind: "pinned to other line" }));
  }
  return reasons;
}

/** Gives the decoder of the plant without any order, which times it when first asked. */
function emptyPlant({ problem }: Decoder): () => Decoder {
  let empty: Decoder | null = null;
  return () => {
    if (empty !== null) return empty;
    empty = new Decoder(problem, false);
    empty.decode(emptySequences(problem));
    return empty;
  };
}

function reasonsFor(decoder: Decoder, job: number, emptyDecoder: () => Decoder): UnplannedReason[] {
  const { problem } = decoder;
  const { data, jobs, lots } = problem;
  const record = data.jobs[job]!;
  const reasons: UnplannedReason[] = [];
  if (record.options.length === 0) {
    reasons.push(reasonOf("no-line-fits", null, { kind: "no line" }));
  }
  if (jobs.release[job]! >= NEVER || jobs.release[job]! >= problem.horizon) {
    const sheet = data.sheets.findIndex(({ id }) => id === record.sheetId);
    const sheetNeverComes =
      sheet >= 0 &&
      data.sheets[sheet]!.stockKg !== null &&
      supplyInstant(problem.sheets, sheet, jobs.grams[job]!) >= problem.horizon;
    const kg = Math.round(jobs.grams[job]! / 1000);
    reasons.push(
      sheetNeverComes
        ? reasonOf("sheet-never-arrives", null, {
            kind: "sheet never arrives",
            sheetId: record.sheetId ?? "",
            kg,
          })
        : reasonOf("beyond-horizon", null, { kind: "starts after horizon" }),
    );
  }
  reasons.push(...refusalsBeforeSearch(problem, job));
  const whole = lots.firstLot[job]!;
  const first = lots.firstOption[whole]!;
  const end = lots.firstOption[whole + 1]!;
  const sheetShort = jobs.sheet[job]! >= 0 && sheetIsUsedUp(decoder, job);
  if (sheetShort)
    reasons.push(
      reasonOf("sheet-never-arrives", null, { kind: "sheet used up", sheetId: record.sheetId ?? "" }),
    );
  if (jobs.release[job]! < problem.horizon) {
    const empty = record.latestStartAt === undefined ? null : emptyDecoder();
    for (let option = first; option < end; option++) {
      const alone =
        refusalAlone(problem, job, option) ?? (empty === null ? null : startsTooLate(empty, option, "alone"));
      if (alone !== null) reasons.push(alone);
      else if (!sheetShort)
        reasons.push(startsTooLate(decoder, option, "behind others") ?? refusalInPlan(decoder, job, option));
    }
  }
  return [...reasons, ...record.refusals.map(misfitReason)];
}

function sheetIsUsedUp(decoder: Decoder, job: number): boolean {
  const { problem, ledger } = decoder;
  const sheet = problem.jobs.sheet[job]!;
  return (
    supplyInstant(problem.sheets, sheet, ledger.gramsTaken[sheet]! + problem.jobs.grams[job]!) >=
    problem.horizon
  );
}

/**
 * Every order without a run in the plan that the decoder timed last, with the rules that refuse it line by line: asked again
 * of the order alone first, then against what the plan leaves free. Never without a reason.
 */
export function* explainingUnplanned(decoder: Decoder): Work<UnplannedOrder[]> {
  const { data, lots } = decoder.problem;
  const emptyDecoder = emptyPlant(decoder);
  const orders: UnplannedOrder[] = [];
  for (const [j, { orderId }] of data.jobs.entries()) {
    if (decoder.option[lots.firstLot[j]!]! >= 0) continue;
    if (orders.length % ORDERS_PER_PAUSE === 0) yield;
    orders.push({ orderId, reasons: reasonsFor(decoder, j, emptyDecoder) });
  }
  return orders.sort((a, b) => (a.orderId < b.orderId ? -1 : 1));
}

/** The same of one order; empty where it runs. */
export function whyNotInPlan(decoder: Decoder, job: number): readonly UnplannedReason[] {
  if (decoder.option[decoder.problem.lots.firstLot[job]!]! >= 0) return [];
  return reasonsFor(decoder, job, emptyPlant(decoder));
}

/** As `explainingUnplanned`, without a pause. */
export function whyUnplanned(decoder: Decoder): UnplannedOrder[] {
  return finish(explainingUnplanned(decoder));
}
