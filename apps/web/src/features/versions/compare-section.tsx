import type { JSX } from "react";
import { useSearchParams } from "wouter";
import { FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { firstPair, type PlanChoice } from "../../kernels/plan-choices.ts";
import { useComparison, usePlan } from "../../sync/versions.ts";
import { useText } from "../../text/text.ts";
import { ComparisonView } from "./comparison-view.tsx";
import { PlanSelect } from "./plan-select.tsx";

interface CompareSectionProps {
  readonly board: BoardPlan;
  readonly choices: readonly PlanChoice[];
}

/** Any two plans side by side; which two lives in the address. */
export function CompareSection({ board, choices }: CompareSectionProps): JSX.Element {
  const { versions: text } = useText();
  const [address, setAddress] = useSearchParams();
  const [from, to] = firstPair(choices);
  const fromId = address.get("from") ?? from ?? board.planId;
  const toId = address.get("to") ?? to ?? board.planId;
  const choose = (pair: { readonly from: string; readonly to: string }): void =>
    setAddress({ ...pair }, { replace: true });
  return (
    <section className="compare-section" aria-labelledby="compare-title">
      <h2 id="compare-title">{text.compare}</h2>
      <div className="compare-choice">
        <PlanSelect
          label={text.from}
          choices={choices}
          board={board}
          planId={fromId}
          onPlan={(planId) => choose({ from: planId, to: toId })}
        />
        <PlanSelect
          label={text.to}
          choices={choices}
          board={board}
          planId={toId}
          onPlan={(planId) => choose({ from: fromId, to: planId })}
        />
        <button type="button" className="button" onClick={() => choose({ from: toId, to: fromId })}>
          {text.swap}
        </button>
      </div>
      {fromId === toId ? (
        <p className="hint">{text.samePlan}</p>
      ) : (
        <Compared plantId={board.document.plant.id} fromId={fromId} toId={toId} />
      )}
    </section>
  );
}

interface ComparedProps {
  readonly plantId: string;
  readonly fromId: string;
  readonly toId: string;
}

function Compared({ plantId, fromId, toId }: ComparedProps): JSX.Element {
  const comparison = useComparison(plantId, { fromId, toId });
  const from = usePlan(plantId, fromId);
  const to = usePlan(plantId, toId);
  const failed = [comparison, from, to].find(({ error }) => error !== null);
  if (failed !== undefined)
    return <FailureNotice isInner cause={failed.error} onRetry={() => void failed.refetch()} />;
  if (comparison.data === undefined || from.data === undefined || to.data === undefined)
    return <LoadingNotice />;
  return <ComparisonView comparison={comparison.data} from={from.data.document} to={to.data.document} />;
}
