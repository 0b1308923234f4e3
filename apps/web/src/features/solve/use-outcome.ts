import { useQueryClient } from "@tanstack/react-query";
import type { PlanDocument, SolveRunResponse } from "@formweek/contracts";
import { useEffect, useRef, useState } from "react";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { isRunning, keys } from "../../sync/queries.ts";
import { followSolve } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";

interface Outcome {
  readonly isFailure: boolean;
  readonly words: readonly string[];
  /** The run that was watched and has ended; null until then and once dismissed. */
  readonly ended: SolveRunResponse | null;
  readonly dismiss: () => void;
}

interface Before {
  readonly runId: string;
  /** Plan that was shown when the run was first seen; null when there was none. */
  readonly document: PlanDocument | null;
}

/**
 * What came of the run that was watched: remembers the plan from before it, and compares once the run has ended and its
 * plan has arrived. A run that had ended before the page was opened is not announced again.
 */
export function useOutcome(
  plantId: string,
  run: SolveRunResponse | undefined,
  document: PlanDocument | null,
): Outcome {
  const text = useText();
  const naming = useNaming();
  const format = useFormat();
  const client = useQueryClient();
  const before = useRef<Before | null>(null);
  const [ended, setEnded] = useState<SolveRunResponse | null>(null);

  useEffect(() => {
    if (run === undefined) return;
    if (isRunning(run.state)) {
      if (before.current?.runId === run.runId) return;
      before.current = {
        runId: run.runId,
        document,
      };
      setEnded(null);
      return;
    }
    if (before.current?.runId !== run.runId) return;
    void client.invalidateQueries({ queryKey: keys.latestPlan(plantId) });
    void client.invalidateQueries({ queryKey: keys.orders(plantId) });
    setEnded(run);
  }, [client, document, plantId, run]);

  const dismiss = (): void => {
    before.current = null;
    setEnded(null);
    followSolve(plantId, null);
  };
  if (ended === null) return { isFailure: false, words: [], ended, dismiss };
  if (ended.state === "failed") {
    const problem = ended.problem === null ? null : text.refusals.problem(ended.problem, naming);
    return {
      isFailure: true,
      words: [text.solve.failed + ".", problem?.cause ?? "", problem?.remedy ?? ""].filter(
        (words) => words !== "",
      ),
      ended,
      dismiss,
    };
  }
  if (ended.task.kind !== "plan") return { isFailure: false, words: [], ended, dismiss };
  const words = [ended.state === "stopped" ? text.solve.stopped : text.solve.done];
  const was = before.current?.document ?? null;
  // a first plan has nothing to be compared with, least of all with itself
  if (was !== null && document !== null && was !== document) {
    const [from, to] = [format.money(was.objective.total), format.money(document.objective.total)];
    words.push(from === to ? text.solve.sameCost(to) : text.solve.lessCost(from, to));
    words.push(text.solve.lateChange(was.summary.late, document.summary.late));
  }
  if (ended.task.favour !== null) words.push(text.compare.favoured[ended.task.favour]);
  return { isFailure: false, words, ended, dismiss };
}
