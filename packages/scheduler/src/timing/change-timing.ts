import { addWork, NEVER, nextOpen, subtractWork } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";

/** A change to be timed. Mutable, so that the decoder can use one over and over. */
export interface ChangeAsk {
  line: number;
  /** spec, >= 0 */
  spec: number;
  /** s: the line is free, and nothing forbids the change from then on */
  from: number;
  /** s: the mould to be mounted is there; 0 when none is mounted */
  mouldAt: number;
  /** s: the run may not start before; the change need not be done much earlier */
  neededAt: number;
  /** times as long as planned that it takes; 1 but where a plan is played */
  stretch: number;
}

/** When a change happens. `start` is NEVER when it cannot; `team` -1 when none works. */
export interface ChangeTimes {
  start: number;
  mountStart: number;
  tailStart: number;
  end: number;
  team: number;
}

export function noChangeTimes(): ChangeTimes {
  return { start: NEVER, mountStart: NEVER, tailStart: NEVER, end: NEVER, team: -1 };
}

/** When teams and trolleys are free again; all later bookings come after. */
export interface CrewLedger {
  /** [team] s */
  readonly teamFree: Int32Array;
  /** [trolley] s */
  readonly trolleyFree: Int32Array;
}

/** A change done for a run that waits is begun this long before the last moment, s: room for what may come between. */
const RESERVE_SECONDS = 2 * 3600;

/** Seconds that a phase takes. */
function lasting(seconds: number, { stretch }: ChangeAsk): number {
  return stretch === 1 ? seconds : Math.round(seconds * stretch);
}

/** Start of a team's work so that mounting does not begin before the mould is there. */
function startForMould(calendar: CompiledProblem["teams"][number], ask: ChangeAsk, dismount: number): number {
  if (dismount === 0) return nextOpen(calendar, ask.mouldAt);
  const start = nextOpen(calendar, subtractWork(calendar, ask.mouldAt, dismount));
  if (addWork(calendar, start, dismount) >= ask.mouldAt) return start;
  // the mould comes in a pause: dismounting must then end in the next shift
  return nextOpen(calendar, addWork(calendar, nextOpen(calendar, start), 1));
}

/** Without team work a change is its tail alone. */
function timeTail(problem: CompiledProblem, ask: ChangeAsk, out: ChangeTimes): void {
  const tail = lasting(problem.changes.tail[ask.spec]!, ask);
  const from = Math.max(ask.from, ask.mouldAt);
  const start = tail === 0 ? from : nextOpen(problem.lines.calendar[ask.line]!, from);
  out.team = -1;
  out.end = addWork(problem.lines.calendar[ask.line]!, start, tail);
  out.start = out.end >= NEVER ? NEVER : start;
  out.mountStart = start;
  out.tailStart = start;
}

/** Earliest instant that is not needlessly early for a run that waits for its release. */
function notTooEarly(problem: CompiledProblem, ask: ChangeAsk): number {
  const { changes, lines, anyTeam } = problem;
  if (ask.neededAt <= ask.from + changes.total[ask.spec]! + RESERVE_SECONDS) return ask.from;
  const tailFrom = subtractWork(lines.calendar[ask.line]!, ask.neededAt, changes.tail[ask.spec]!);
  const latest = subtractWork(anyTeam, tailFrom, changes.teamWork[ask.spec]!) - RESERVE_SECONDS;
  return Math.max(ask.from, latest);
}

/** Times one change at the earliest, with the team that is done first. Bookings are left to the caller. */
export function timeChange(
  problem: CompiledProblem,
  crews: CrewLedger,
  ask: ChangeAsk,
  out: ChangeTimes,
): void {
  const { changes, lines, teams } = problem;
  if (changes.teamWork[ask.spec] === 0) {
    timeTail(problem, ask, out);
    return;
  }
  const dismount = lasting(changes.dismount[ask.spec]!, ask);
  const mount = lasting(changes.mount[ask.spec]!, ask);
  const trolley = changes.usesTrolley[ask.spec] === 1 ? lines.trolley[ask.line]! : -1;
  let from = notTooEarly(problem, ask);
  if (trolley >= 0) from = Math.max(from, crews.trolleyFree[trolley]!);
  out.start = NEVER;
  out.tailStart = NEVER;
  for (let team = 0; team < teams.length; team++) {
    const calendar = teams[team]!;
    let start = nextOpen(calendar, Math.max(from, crews.teamFree[team]!));
    if (start >= out.tailStart) continue;
    let mountStart = addWork(calendar, start, dismount);
    if (mountStart < ask.mouldAt) {
      start = startForMould(calendar, ask, dismount);
      mountStart = addWork(calendar, start, dismount);
    }
    const tailStart = addWork(calendar, mountStart, mount);
    if (tailStart >= out.tailStart) continue;
    out.start = start;
    out.mountStart = mountStart;
    out.tailStart = tailStart;
    out.team = team;
  }
  if (out.start >= NEVER) return;
  out.end = addWork(lines.calendar[ask.line]!, out.tailStart, lasting(changes.tail[ask.spec]!, ask));
  if (out.end >= NEVER) out.start = NEVER;
}
