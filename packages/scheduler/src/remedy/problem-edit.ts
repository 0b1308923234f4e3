import {
  subtractWorkingTime,
  uniteWorkingTimes,
  workingTimeOf,
  type WorkingTime,
} from "@formweek/capacity-model";
import type { Job, JobOption, ProblemData } from "../problem/problem-data.ts";

/**
 * One small change to a problem, as people would say it. Instants are seconds since the epoch, spells half-open. An edit
 * that makes something possible never takes anything away.
 */
export type ProblemEdit =
  /** Lines work in the spell too, with the operators that they need. */
  | { readonly kind: "extra shift"; readonly lineId: string; readonly from: number; readonly to: number }
  /** One more setter team in the spell. */
  | { readonly kind: "extra team"; readonly from: number; readonly to: number }
  /** More heads in a pool in the spell, hundredths. */
  | {
      readonly kind: "extra operators";
      readonly poolId: string;
      readonly hundredths: number;
      readonly from: number;
      readonly to: number;
    }
  | { readonly kind: "mould copy"; readonly mouldId: string }
  /** The order may also run there. */
  | { readonly kind: "another line"; readonly orderId: string; readonly option: JobOption }
  /** The order, which had to be made in one go, may be made in lots: pieces, as in `Job.lots`. */
  | {
      readonly kind: "lots";
      readonly orderId: string;
      readonly most: number;
      readonly leastPieces: number;
      readonly unitPieces: number;
    }
  /** The order may start earlier. */
  | { readonly kind: "earlier start"; readonly orderId: string; readonly at: number }
  /** The order is due later; its plan may stay as it is. */
  | { readonly kind: "later due"; readonly orderId: string; readonly at: number }
  /** All arrivals of the sheet come earlier by so much. */
  | { readonly kind: "earlier sheet"; readonly sheetId: string; readonly seconds: number }
  /** The line stands still in the spell. */
  | { readonly kind: "line down"; readonly lineId: string; readonly from: number; readonly to: number }
  | { readonly kind: "order cancelled"; readonly orderId: string }
  | { readonly kind: "rush order"; readonly job: Job };

/** Why an edit cannot be made. */
export interface EditFault {
  readonly code: "unknown-record" | "empty-spell" | "already-there";
  readonly text: string;
  readonly remedy: string;
}

export type EditedProblem =
  { readonly ok: true; readonly problem: ProblemData } | { readonly ok: false; readonly fault: EditFault };

const unknown = (kind: string, id: string): EditedProblem => ({
  ok: false,
  fault: {
    code: "unknown-record",
    text: `The problem has no ${kind} ${id}.`,
    remedy: `Name a ${kind} of the problem.`,
  },
});

const done = (problem: ProblemData): EditedProblem => ({ ok: true, problem });

/** The list with one record changed; null where none has the id. */
function changed<T>(list: readonly T[], isIt: (record: T) => boolean, change: (record: T) => T): T[] | null {
  return list.some(isIt) ? list.map((record) => (isIt(record) ? change(record) : record)) : null;
}

function extraShift(problem: ProblemData, lineId: string, spell: WorkingTime): EditedProblem {
  const lines = changed(
    problem.lines,
    (line) => line.id === lineId,
    (line) => ({
      ...line,
      workingTime: uniteWorkingTimes(line.workingTime, spell),
      overtime: uniteWorkingTimes(
        line.overtime ?? workingTimeOf([]),
        subtractWorkingTime(spell, line.workingTime),
      ),
    }),
  );
  const line = problem.lines.find((each) => each.id === lineId);
  if (lines === null || line === undefined) return unknown("line", lineId);
  // operators come only for the hours in which the line did not work before
  const newHours = subtractWorkingTime(spell, line.workingTime);
  const crew = { workingTime: newHours, hundredths: line.operatorsHundredths };
  const pools = problem.pools.map((pool) =>
    pool.id === line.poolId ? { ...pool, crews: [...pool.crews, crew] } : pool,
  );
  return done({ ...problem, lines, pools });
}

function editJob(problem: ProblemData, orderId: string, change: (job: Job) => Job): EditedProblem {
  const jobs = changed(problem.jobs, (job) => job.orderId === orderId, change);
  return jobs === null ? unknown("order", orderId) : done({ ...problem, jobs });
}

const alreadyThere = (text: string, remedy: string): EditedProblem => ({
  ok: false,
  fault: { code: "already-there", text, remedy },
});

function allowLots(problem: ProblemData, edit: Extract<ProblemEdit, { kind: "lots" }>): EditedProblem {
  const { orderId, most, leastPieces, unitPieces } = edit;
  if (problem.jobs.some((job) => job.orderId === orderId && job.lots !== undefined))
    return alreadyThere(`Order ${orderId} may be made in lots already.`, "Change the order itself.");
  return editJob(problem, orderId, (job) => ({ ...job, lots: { most, leastPieces, unitPieces } }));
}

function freeTeamId(problem: ProblemData): string {
  for (let n = 1; ; n++) {
    const id = `extra team ${n}`;
    if (!problem.teams.some((team) => team.id === id)) return id;
  }
}

function spellOf(edit: { readonly from: number; readonly to: number }): WorkingTime {
  return workingTimeOf([[edit.from, edit.to]]);
}

function withSpell(
  problem: ProblemData,
  edit: Extract<ProblemEdit, { readonly from: number }>,
): EditedProblem {
  const spell = spellOf(edit);
  switch (edit.kind) {
    case "extra shift":
      return extraShift(problem, edit.lineId, spell);
    case "extra team":
      return done({
        ...problem,
        teams: [...problem.teams, { id: freeTeamId(problem), workingTime: spell }],
      });
    case "extra operators": {
      const crew = { workingTime: spell, hundredths: edit.hundredths };
      const pools = changed(
        problem.pools,
        (pool) => pool.id === edit.poolId,
        (pool) => ({ ...pool, crews: [...pool.crews, crew] }),
      );
      return pools === null ? unknown("operator pool", edit.poolId) : done({ ...problem, pools });
    }
    case "line down": {
      const lines = changed(
        problem.lines,
        (line) => line.id === edit.lineId,
        (line) => ({ ...line, workingTime: subtractWorkingTime(line.workingTime, spell) }),
      );
      return lines === null ? unknown("line", edit.lineId) : done({ ...problem, lines });
    }
  }
}

/** The problem with one edit made; the given one stays as it is. */
export function applyEdit(problem: ProblemData, edit: ProblemEdit): EditedProblem {
  if ("from" in edit) {
    if (edit.from < edit.to) return withSpell(problem, edit);
    const text = "The spell ends before it begins.";
    return { ok: false, fault: { code: "empty-spell", text, remedy: "Give an end after the start." } };
  }
  switch (edit.kind) {
    case "mould copy": {
      const moulds = changed(
        problem.moulds,
        (mould) => mould.id === edit.mouldId,
        (mould) => ({ ...mould, copies: mould.copies + 1 }),
      );
      return moulds === null ? unknown("mould", edit.mouldId) : done({ ...problem, moulds });
    }
    case "another line":
      return editJob(problem, edit.orderId, (job) => ({ ...job, options: [...job.options, edit.option] }));
    case "lots":
      return allowLots(problem, edit);
    case "earlier start":
      return editJob(problem, edit.orderId, (job) => ({
        ...job,
        earliestStartAt: Math.min(job.earliestStartAt, edit.at),
      }));
    case "later due":
      return editJob(problem, edit.orderId, (job) => ({ ...job, dueAt: Math.max(job.dueAt, edit.at) }));
    case "earlier sheet": {
      const sheets = changed(
        problem.sheets,
        (sheet) => sheet.id === edit.sheetId,
        (sheet) => ({
          ...sheet,
          arrivals: sheet.arrivals.map(({ at, kg }) => ({ at: at - edit.seconds, kg })),
        }),
      );
      return sheets === null ? unknown("sheet", edit.sheetId) : done({ ...problem, sheets });
    }
    case "order cancelled": {
      const jobs = problem.jobs.filter((job) => job.orderId !== edit.orderId);
      if (jobs.length === problem.jobs.length) return unknown("order", edit.orderId);
      return done({ ...problem, jobs, pins: problem.pins.filter((pin) => pin.orderId !== edit.orderId) });
    }
    case "rush order": {
      if (!problem.jobs.some((job) => job.orderId === edit.job.orderId))
        return done({ ...problem, jobs: [...problem.jobs, edit.job] });
      return alreadyThere(
        `The problem has an order ${edit.job.orderId} already.`,
        "Give it a new order number.",
      );
    }
  }
}

/** All edits in their order; the first that cannot be made ends it. */
export function applyEdits(problem: ProblemData, edits: readonly ProblemEdit[]): EditedProblem {
  let edited: EditedProblem = done(problem);
  for (const edit of edits) if (edited.ok) edited = applyEdit(edited.problem, edit);
  return edited;
}
