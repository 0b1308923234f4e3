import { localTextAt } from "@formweek/capacity-model";
import type { Pin } from "@formweek/scheduler";
import { type AppError, appError } from "../errors.ts";
import type { FrozenPlan } from "./frozen-plan.ts";
import { isoInstant } from "./iso-instant.ts";

const MOST_NAMED = 20;

/** A change would move frozen runs, and nobody has said that it may. */
export function frozenRefusal(
  { document, frozenUntil, by, at }: FrozenPlan,
  moved: readonly Pin[],
): AppError {
  const local = (instant: number): string =>
    localTextAt(document.plant.timeZone, instant).slice(0, 16).replace("T", " ");
  const lines = new Map(document.lines.map(({ id, name }) => [id, name]));
  const [first] = moved;
  const title =
    moved.length === 1
      ? `Order ${first?.orderId ?? ""} is frozen.`
      : `${moved.length} orders that are frozen would move.`;
  const remedy = "Choose another place, or confirm that what is frozen may move.";
  return appError(
    "frozen-runs",
    {
      title,
      cause: `The plan that was given out by ${by} at ${local(at)} keeps runs in place that start before ${local(frozenUntil)}.`,
      remedy,
    },
    moved.slice(0, MOST_NAMED).map(({ orderId, lineId, startAt }) => ({
      path: "overFrozen",
      problem: `Order ${orderId} is given out${lineId === null ? "" : ` for ${lines.get(lineId) ?? lineId}`} at ${local(startAt ?? at)}.`,
      remedy,
      cause: { kind: "order frozen", orderId, lineId, at: isoInstant(startAt ?? at) },
    })),
  );
}
