import { useMemo, useState, type JSX } from "react";
import type { PlanResponse, Publication, WorkingPlanResponse } from "@formweek/contracts";
import { ToBoard } from "../../components/to-board.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { boardPlan } from "../../kernels/board-plan.ts";
import { planChoices } from "../../kernels/plan-choices.ts";
import { useOlderSteps } from "../../sync/versions.ts";
import { useText } from "../../text/text.ts";
import { CompareSection } from "./compare-section.tsx";
import { HistorySection } from "./history-section.tsx";
import { PlanState } from "./plan-state.tsx";

interface PlansScreenProps {
  readonly plan: PlanResponse | null;
  readonly working: WorkingPlanResponse;
  readonly publications: readonly Publication[];
}

/** The history of a plant's plans, and any two of them side by side. */
export function PlansScreen({ plan, working, publications }: PlansScreenProps): JSX.Element {
  const text = useText();
  if (plan === null) {
    return (
      <EmptyNotice title={text.versions.noHistory}>
        <p>{text.board.noPlanHint}</p>
        <ToBoard />
      </EmptyNotice>
    );
  }
  return <OpenPlans plan={plan} working={working} publications={publications} />;
}

interface OpenPlansProps extends PlansScreenProps {
  readonly plan: PlanResponse;
}

function OpenPlans({ plan, working, publications }: OpenPlansProps): JSX.Element {
  const { versions: text } = useText();
  const board = useMemo(() => boardPlan(plan.planId, plan.document), [plan]);
  const [wantsOlder, setWantsOlder] = useState(false);
  const oldest = working.steps.at(-1)?.revision ?? null;
  const older = useOlderSteps(plan.document.plant.id, wantsOlder ? oldest : null);
  const steps = useMemo(
    () => [...working.steps, ...(older.data?.pages.flat() ?? [])],
    [working.steps, older.data],
  );
  const last = steps.at(-1)?.revision ?? 1;
  const hasOlder = last > 1 && !older.isFetching;
  const choices = useMemo(
    () => planChoices({ working, publications, steps }),
    [working, publications, steps],
  );
  return (
    <div className="page page-plans">
      <div className="page-head">
        <h1>{text.title}</h1>
        <PlanState plan={plan}>
          <ToBoard />
        </PlanState>
      </div>
      <div className="plans-body">
        <CompareSection board={board} choices={choices} />
        <HistorySection
          board={board}
          working={working}
          publications={publications}
          steps={steps}
          onOlder={
            hasOlder
              ? () => {
                  if (wantsOlder) void older.fetchNextPage();
                  else setWantsOlder(true);
                }
              : null
          }
          isLoadingOlder={older.isFetching}
        />
      </div>
    </div>
  );
}
