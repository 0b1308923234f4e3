import type { IdleGap } from "@formweek/scheduler";
import { useEffect, useState } from "react";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { useProblem } from "../../sync/problem.ts";
import type { ShownGap } from "../../trial/idle-gap.ts";

export type GapAnswer = "working" | "not known" | IdleGap;

/** What a line waits for in a gap, worked out here by the engine that is loaded for it. */
export function useIdleGap(plan: BoardPlan, { lineId, start, end }: ShownGap): GapAnswer {
  const { data, isError } = useProblem(plan.document.plant.id, plan.planId, true);
  const [found, setFound] = useState<{ readonly key: string; readonly gap: IdleGap | null } | null>(null);
  const key = `${plan.planId} ${lineId} ${start}`;

  useEffect(() => {
    if (data === undefined) return;
    let isWanted = true;
    void import("../../trial/idle-gap.ts").then(({ idleGap }) => {
      if (isWanted) setFound({ key, gap: idleGap(plan, data.problem, { lineId, start, end }) });
    });
    return () => {
      isWanted = false;
    };
  }, [plan, data, key, lineId, start, end]);

  if (isError) return "not known";
  if (found?.key !== key) return "working";
  return found.gap ?? "not known";
}
