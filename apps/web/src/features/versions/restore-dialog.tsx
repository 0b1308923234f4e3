import { useState, type JSX } from "react";
import type { WorkingPlanResponse } from "@formweek/contracts";
import { ComparisonWords } from "../../components/comparison-words.tsx";
import { FailureWords } from "../../components/failure-words.tsx";
import { Modal } from "../../components/modal.tsx";
import { LoadingNotice } from "../../components/notice.tsx";
import { PlanFigures } from "../../components/plan-figures.tsx";
import { useComparison, useRestore } from "../../sync/versions.ts";
import { useText } from "../../text/text.ts";

interface RestoreDialogProps {
  readonly plantId: string;
  readonly planId: string;
  readonly working: WorkingPlanResponse;
  readonly onClose: () => void;
  readonly onRestored: () => void;
}

/** What working on an earlier plan again would change, and that nothing is lost by it. */
export function RestoreDialog(props: RestoreDialogProps): JSX.Element {
  const { versions: text } = useText();
  const { plantId, planId, working, onClose, onRestored } = props;
  const [seen, setSeen] = useState(working);
  const restore = useRestore(plantId);
  const comparison = useComparison(plantId, { fromId: seen.planId, toId: planId });
  const isStale = seen.revision !== working.revision && !restore.isPending && !restore.isSuccess;
  const lookAgain = (): void => {
    restore.reset();
    setSeen(working);
  };
  return (
    <Modal title={text.restoreTitle} onClose={onClose}>
      {restore.error !== null && <FailureWords cause={restore.error} />}
      {restore.error === null && isStale && <p role="alert">{text.changedMeanwhile}</p>}
      <p>{text.restoreHint}</p>
      {comparison.error !== null ? (
        <FailureWords cause={comparison.error} />
      ) : comparison.data === undefined ? (
        <LoadingNotice />
      ) : (
        <>
          <ComparisonWords comparison={comparison.data} />
          <PlanFigures before={comparison.data.from} after={comparison.data.to} />
        </>
      )}
      <div className="tool-group">
        {isStale ? (
          <button type="button" className="button button-main" onClick={lookAgain}>
            {text.lookAgain}
          </button>
        ) : (
          <button
            type="button"
            className="button button-main"
            disabled={restore.isPending}
            onClick={() => restore.mutate({ revision: seen.revision, planId }, { onSuccess: onRestored })}
          >
            {restore.isPending ? text.restoring : text.restoreNow}
          </button>
        )}
        <button type="button" className="button" onClick={onClose}>
          {text.cancel}
        </button>
      </div>
    </Modal>
  );
}
