import { appendJob } from "./append-job.ts";
import { calendarOf, calendarOfSpells, commonHours, NEVER, type Calendar } from "./calendar.ts";
import { compileCrews } from "./compile-crews.ts";
import { compileJobs } from "./compile-jobs.ts";
import type {
  CompiledChanges,
  CompiledJobs,
  CompiledLines,
  CompiledMoulds,
  CompiledProblem,
  PricedTerms,
} from "./compiled-problem.ts";
import type { Job, ProblemData } from "./problem-data.ts";
import { finish, type Work } from "../work/work.ts";

/** Position of each id. */
function indexById(records: readonly { readonly id: string }[]): ReadonlyMap<string, number> {
  return new Map(records.map((record, index) => [record.id, index]));
}

/** The position of `id`, or -1 for none. */
function indexOr(index: ReadonlyMap<string, number>, id: string | null): number {
  return id === null ? -1 : (index.get(id) ?? -1);
}

/** Seconds after the horizon's start, within [0, NEVER]. */
function instantAfter(origin: number, at: number): number {
  return Math.max(0, Math.min(NEVER, at - origin));
}

function compileChanges(data: ProblemData): CompiledChanges {
  const n = data.setups.length;
  const matrix = new Int32Array(data.changeClasses.length * n * n);
  data.changeClasses.forEach((changeClass, c) => {
    changeClass.matrix.forEach((row, from) => {
      matrix.set(row, (c * n + from) * n);
    });
  });
  const dismount = Int32Array.from(data.changes, (spec) => spec.dismountSeconds);
  const mount = Int32Array.from(data.changes, (spec) => spec.mountSeconds);
  const tail = Int32Array.from(data.changes, (spec) => spec.tailSeconds);
  const { changePerMachineHour, changePerTeamHour, scrapPerKg } = data.objective;
  const teamWork = Int32Array.from(dismount, (seconds, i) => seconds + mount[i]!);
  const total = Int32Array.from(teamWork, (seconds, i) => seconds + tail[i]!);
  const scrapKg = Float64Array.from(data.changes, (spec) => spec.scrapKg);
  const cost = Float64Array.from(
    scrapKg,
    (kg, i) =>
      kg * scrapPerKg + (total[i]! * changePerMachineHour) / 3600 + (teamWork[i]! * changePerTeamHour) / 3600,
  );
  const usesTrolley = Uint8Array.from(data.changes, (spec) => (spec.usesTrolley ? 1 : 0));
  return { matrix, setupCount: n, dismount, mount, tail, total, teamWork, usesTrolley, scrapKg, cost };
}

function compileMoulds(data: ProblemData, horizon: number): CompiledMoulds {
  const firstCopy = new Int32Array(data.moulds.length + 1);
  const mouldOfCopy: number[] = [];
  const service: (readonly (readonly [number, number])[] | null)[] = [];
  data.moulds.forEach((mould, m) => {
    for (let copy = 0; copy < mould.copies; copy++) {
      mouldOfCopy.push(m);
      const spells = mould.outOfService
        .filter((spell) => spell.copy === copy)
        .map((spell) => [spell.start - data.horizon.start, spell.end - data.horizon.start] as const)
        .sort((a, b) => a[0] - b[0] || a[1] - b[1]);
      const merged = calendarOfSpells(spells, horizon);
      const kept = [...merged.starts].map((start, i) => [start, merged.ends[i]!] as const);
      service.push(kept.length === 0 ? null : kept);
    }
    firstCopy[m + 1] = mouldOfCopy.length;
  });
  const serviceOf = (copy: number) => data.moulds[mouldOfCopy[copy]!]!.service;
  return {
    count: data.moulds.length,
    serviceAfter: Float64Array.from(mouldOfCopy, (_, copy) => serviceOf(copy)?.afterCycles ?? Infinity),
    serviceSeconds: Int32Array.from(mouldOfCopy, (_, copy) =>
      Math.min(NEVER / 2, serviceOf(copy)?.seconds ?? 0),
    ),
    cyclesDone: Float64Array.from(
      mouldOfCopy,
      (mould, copy) => serviceOf(copy)?.cyclesDone[copy - firstCopy[mould]!] ?? 0,
    ),
    firstCopy,
    carrying: Int32Array.from(data.moulds, (mould) => Math.min(mould.carryingSeconds, NEVER / 2)),
    copyCount: mouldOfCopy.length,
    mouldOfCopy: Int32Array.from(mouldOfCopy),
    service,
  };
}

/** The part of each line's hours that is overtime; null where there is none or it has no price. */
function overtimeOf(data: ProblemData, hours: readonly Calendar[]): (Calendar | null)[] {
  return data.lines.map(({ overtime }, l) => {
    if (overtime === undefined || data.objective.overtimePerHour === 0) return null;
    const part = commonHours(calendarOf(overtime, data.horizon.start, hours[l]!.horizon), hours[l]!);
    return part.total === 0 ? null : part;
  });
}

interface LineParts {
  readonly data: ProblemData;
  readonly moulds: CompiledMoulds;
  readonly crews: ReturnType<typeof compileCrews>;
}

function compileLines({ data, moulds, crews }: LineParts): CompiledLines {
  const origin = data.horizon.start;
  const setupIndex = indexById(data.setups);
  const classIndex = indexById(data.changeClasses);
  const trolleyIndex = indexById(data.trolleys);
  const mouldIndex = indexById(data.moulds);
  const initialSetup = data.lines.map((line) => indexOr(setupIndex, line.initial?.setupId ?? null));
  return {
    count: data.lines.length,
    freeAt: Int32Array.from(data.lines, (line) => instantAfter(origin, line.freeAt)),
    initialSetup: Int32Array.from(initialSetup),
    initialCopy: Int32Array.from(data.lines, (line, l) => {
      const setup = initialSetup[l]!;
      const mould = setup < 0 ? -1 : indexOr(mouldIndex, data.setups[setup]!.mouldId);
      return mould < 0 ? -1 : moulds.firstCopy[mould]! + (line.initial?.copy ?? 0);
    }),
    changeClass: Int32Array.from(data.lines, (line) => indexOr(classIndex, line.changeClassId)),
    trolley: Int32Array.from(data.lines, (line) => indexOr(trolleyIndex, line.trolleyId)),
    pool: crews.poolOfLine,
    heads: Int32Array.from(data.lines, (line) => line.operatorsHundredths),
    restartLimit: Int32Array.from(data.lines, (line) => Math.min(line.restartLimitSeconds, NEVER)),
    restartWarmUp: Int32Array.from(data.lines, (line) => Math.min(line.restartWarmUpSeconds, NEVER)),
    overtime: overtimeOf(data, crews.calendar),
    mannedOvertime: overtimeOf(data, crews.runCalendar),
    calendar: crews.calendar,
    runCalendar: crews.runCalendar,
  };
}

function unionOf(calendars: readonly Calendar[], horizon: number): Calendar {
  const only = calendars.length === 1 ? calendars[0] : undefined;
  if (only !== undefined) return only;
  const spells = calendars.flatMap((calendar) =>
    [...calendar.starts].map((start, i) => [start, calendar.ends[i]!] as const),
  );
  spells.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return calendarOfSpells(spells, horizon);
}

/** True when no resource is shared in a way that could make one line wait for another. */
function areLinesIndependent(problem: Omit<CompiledProblem, "linesAreIndependent">): boolean {
  const { lines, moulds, setups, changes, jobs, options } = problem;
  if (lines.pool.some((pool) => pool >= 0) || jobs.sheet.some((sheet) => sheet >= 0)) return false;
  if (changes.teamWork.some((seconds) => seconds > 0)) return false;
  if (moulds.count === 0) return true;
  const users = new Map<number, Set<number>>();
  const note = (setup: number, line: number): void => {
    const mould = setup < 0 ? -1 : setups.mould[setup]!;
    if (mould >= 0) users.set(mould, (users.get(mould) ?? new Set<number>()).add(line));
  };
  lines.initialSetup.forEach((setup, line) => {
    note(setup, line);
  });
  options.setup.forEach((setup, option) => {
    note(setup, options.line[option]!);
  });
  if (moulds.service.some((spells) => spells !== null)) return false;
  // what a line can do then depends on its whole past, which is not in what it holds
  if (moulds.serviceAfter.some((cycles) => cycles < Infinity)) return false;
  return [...users].every(
    ([mould, at]) => at.size <= 1 && moulds.firstCopy[mould + 1]! > moulds.firstCopy[mould]!,
  );
}

/** What has a price, and something to count at it. */
export function termsOf(data: ProblemData, lines: CompiledLines, jobs: CompiledJobs): PricedTerms {
  const { balancePerHour, movedLinePerOrder, movedStartPerHour } = data.objective;
  return {
    overtime: lines.overtime.some((hours) => hours !== null),
    earliness: jobs.earlyPerSecond.some((price) => price > 0),
    balance: balancePerHour > 0,
    stability:
      movedLinePerOrder + movedStartPerHour > 0 && data.jobs.some(({ published }) => published !== undefined),
  };
}

/** The same problem with one job more, the last: its arrays are those of `compile`. O(jobs + options), without a look at their records. */
export function withJob(problem: CompiledProblem, job: Job): CompiledProblem {
  const data = { ...problem.data, jobs: [...problem.data.jobs, job] };
  const appended = appendJob(problem, job);
  const terms = termsOf(data, problem.lines, appended.jobs);
  const parts = { ...problem, data, ...appended, terms };
  return { ...parts, linesAreIndependent: areLinesIndependent(parts) };
}

/** The work of turning valid records into arrays. Begin it only after `validate` found no fault. O(input + classes × set-ups²). */
export function* compiling(data: ProblemData): Work<CompiledProblem> {
  const origin = data.horizon.start;
  const horizon = data.horizon.end - origin;
  const mouldIndex = indexById(data.moulds);
  const setupIndex = indexById(data.setups);
  const moulds = compileMoulds(data, horizon);
  yield;
  const crews = compileCrews(data, horizon);
  const lines = compileLines({ data, moulds, crews });
  yield;
  const compiledJobs = compileJobs(data);
  yield;
  const changes = compileChanges(data);
  yield;
  const teams = data.teams.map((team) => calendarOf(team.workingTime, origin, horizon));
  const parts = {
    data,
    origin,
    horizon,
    lines,
    setups: {
      count: data.setups.length,
      mould: Int32Array.from(data.setups, (setup) => indexOr(mouldIndex, setup.mouldId)),
      stripped: Int32Array.from(data.setups, (setup) => indexOr(setupIndex, setup.strippedId)),
    },
    changes,
    moulds,
    ...compiledJobs,
    teams,
    anyTeam: unionOf(teams, horizon),
    trolleyCount: data.trolleys.length,
    pools: crews.pools,
    changeAwaitsEarliestStart: data.changeAwaitsEarliestStart,
    terms: termsOf(data, lines, compiledJobs.jobs),
    overtimePrice: data.objective.overtimePerHour / 3600,
    makespanPrice: data.objective.makespanPerHour / 3600,
  };
  return { ...parts, linesAreIndependent: areLinesIndependent(parts) };
}

/** Turns valid records into arrays. Call only after `validate` found no fault. */
export function compile(data: ProblemData): CompiledProblem {
  return finish(compiling(data));
}
