import { useEffect, useState } from "react";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import type { BoardStore } from "../../state/store.ts";
import { useProblem } from "../../sync/problem.ts";
import type { TrialTable } from "../../trial/open-table.ts";

/** What a trial needs beside the plan. */
interface TrialWish {
  readonly mouldName: (mouldId: string) => string;
  /** False for a plan that is not changed by hand. */
  readonly isWanted: boolean;
}

/** Lets the board try edits of the standing plan; answers whether it can yet. The problem is fetched and opened in idle time. */
export function useTrial(
  standing: BoardPlan,
  store: BoardStore,
  { mouldName, isWanted }: TrialWish,
): boolean {
  const isIdle = useIdle(standing.planId);
  const { data: tried } = useProblem(standing.document.plant.id, standing.planId, isIdle && isWanted);
  const [table, setTable] = useState<TrialTable | null>(null);

  useEffect(() => {
    if (tried === undefined) return;
    let isAwaited = true;
    void import("../../trial/open-table.ts").then(({ openTable }) =>
      whenIdle(() => {
        if (isAwaited) setTable(openTable({ standing, ...tried, mouldName }));
      }),
    );
    return () => {
      isAwaited = false;
    };
  }, [tried, standing, mouldName]);

  const isCurrent = table?.planId === standing.planId;
  useEffect(() => {
    if (table === null || !isCurrent) return;
    let request = 0;
    const stop = store.onEffect((effect) => {
      if (effect.kind !== "try edit") return;
      const { edit } = effect;
      // Of several places passed within one frame only the last is tried.
      cancelAnimationFrame(request);
      request = requestAnimationFrame(() => store.send({ kind: "tried", edit, trial: table.tryOut(edit) }));
    });
    return () => {
      cancelAnimationFrame(request);
      stop();
    };
  }, [table, isCurrent, store]);
  return isCurrent;
}

/** True once the browser has had nothing else to do since the plan was shown. */
function useIdle(planId: string): boolean {
  const [idleFor, setIdleFor] = useState<string | null>(null);
  useEffect(() => whenIdle(() => setIdleFor(planId)), [planId]);
  return idleFor === planId;
}

/** Calls back when the browser is idle, soon where it cannot tell; answers how to stop. */
function whenIdle(run: () => void): () => void {
  if (!("requestIdleCallback" in window)) {
    const timer = setTimeout(run, 200);
    return () => clearTimeout(timer);
  }
  const request = requestIdleCallback(run, { timeout: 2000 });
  return () => cancelIdleCallback(request);
}
