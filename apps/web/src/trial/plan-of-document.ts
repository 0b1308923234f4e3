import type { PlanDocument } from "@formweek/contracts";
import type { Plan } from "@formweek/scheduler";
import { secondsOf } from "../kernels/board-plan.ts";

/** A plan document as the engine takes a plan up to edit it: by its lots and by what was taken out. It times the segments itself. */
export function planOfDocument({ lots, unplanned, objective }: PlanDocument): Plan {
  return {
    segments: [],
    lots: lots.map((lot) => ({
      ...lot,
      start: secondsOf(lot.start),
      end: secondsOf(lot.end),
      finish: secondsOf(lot.finish),
    })),
    unplanned: unplanned as Plan["unplanned"],
    objective: objective as Plan["objective"],
  };
}
