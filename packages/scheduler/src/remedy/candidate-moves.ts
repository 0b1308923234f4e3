import type { PlanEdit } from "../edit/plan-edit.ts";
import type { Plan, PlannedLot } from "../plan/plan.ts";
import type { Job, ProblemData } from "../problem/problem-data.ts";

/** Places that are put forward on one line: the one that would just do, and those before it. */
const PLACES_A_LINE = 3;

type Move = Extract<PlanEdit, { kind: "move" }>;

/** Seconds of running of a lot at the fastest of its options on a line. */
function secondsOn(job: Job, lot: PlannedLot, lineId: string): number {
  const rates = job.options
    .filter((option) => option.lineId === lineId)
    .map((option) => option.secondsPerPiece);
  return rates.reduce((least, rate) => Math.min(least, rate), Infinity) * lot.pieces;
}

function movesTo(job: Job, lot: PlannedLot, lineId: string, onLine: readonly PlannedLot[]): readonly Move[] {
  const others = onLine.filter((other) => other.orderId !== lot.orderId || other.lot !== lot.lot);
  const latestStart = job.dueAt - job.conditioningSeconds - secondsOn(job, lot, lineId);
  const tooLate = others.findIndex((other) => other.start > latestStart);
  const last = tooLate < 0 ? others.length : tooLate;
  const places = Array.from({ length: PLACES_A_LINE }, (_, back) => last - back).filter(
    (place) => place >= 0,
  );
  return places.map((place) => {
    const next = others[place];
    const before = next === undefined ? null : { orderId: next.orderId, lot: next.lot };
    return { kind: "move", orderId: lot.orderId, lot: lot.lot, lineId, before };
  });
}

/**
 * Moves of a late order's lots, the one that is ready last first, to places at which they could be ready in time, on every line that
 * may make them, at most `most`; whether one helps is for its timing to say. None for an order that the plan does not make.
 */
export function candidateMoves(
  problem: ProblemData,
  plan: Plan,
  orderId: string,
  most: number,
): readonly PlanEdit[] {
  const job = problem.jobs.find((each) => each.orderId === orderId);
  if (job === undefined) return [];
  const byStart = plan.lots.toSorted((a, b) => a.start - b.start);
  const lineIds = [...new Set(job.options.map((option) => option.lineId))];
  const moves = plan.lots
    .filter((lot) => lot.orderId === orderId && lot.finish > job.dueAt)
    .sort((a, b) => b.finish - a.finish)
    .flatMap((lot) =>
      lineIds.flatMap((lineId) =>
        movesTo(
          job,
          lot,
          lineId,
          byStart.filter((other) => other.lineId === lineId),
        ),
      ),
    );
  return moves.slice(0, most);
}
