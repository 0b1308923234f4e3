import { useState, type JSX, type ReactNode } from "react";
import type { PlanResponse, Publication } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { personName } from "../../format/person.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useComparison, usePublications } from "../../sync/versions.ts";
import { useWorkingPlan } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { PublishDialog } from "./publish-dialog.tsx";

interface PlanStateProps {
  readonly plan: PlanResponse;
  /** Ways to other pages. */
  readonly children: ReactNode;
}

/** Whether the plan on the board is the published one, who published it and when; with the way to publish it. */
export function PlanState({ plan, children }: PlanStateProps): JSX.Element {
  const text = useText();
  const plantId = plan.document.plant.id;
  const working = useWorkingPlan(plantId);
  const publications = usePublications(plantId);
  const [isOpen, setOpen] = useState(false);
  const published = publications.data?.[0] ?? null;
  const known = working.data;
  // The plan and where it stands arrive one after the other.
  const revision = known?.planId === plan.planId ? known.revision : null;
  const isReady = revision !== null && publications.data !== undefined;
  return (
    <section className="plan-state" aria-label={text.versions.state}>
      {publications.data !== undefined && <StateWords plan={plan} published={published} />}
      {children}
      <button type="button" className="button" disabled={!isReady} onClick={() => setOpen(true)}>
        <Icon name="export" /> {text.versions.publish}
      </button>
      {isOpen && (
        <PublishDialog plan={plan} revision={revision} published={published} onClose={() => setOpen(false)} />
      )}
    </section>
  );
}

interface StateWordsProps {
  readonly plan: PlanResponse;
  readonly published: Publication | null;
}

function StateWords({ plan, published }: StateWordsProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const isChanged = published !== null && published.planId !== plan.planId;
  const pair = { fromId: isChanged ? published.planId : null, toId: isChanged ? plan.planId : null };
  const comparison = useComparison(plan.document.plant.id, pair);
  if (published === null) return <p className="hint">{text.versions.neverPublished}</p>;
  const { by, at, note, frozenUntil } = published;
  const since = isChanged
    ? text.versions.changedSince(comparison.data?.movedLots.length ?? 0)
    : text.versions.unchanged;
  return (
    <p className="hint" title={note === "" ? undefined : note}>
      {text.versions.published(personName(by, text), format.instant(secondsOf(at)))},{" "}
      <strong className={isChanged ? "plan-changed" : "plan-kept"}>{since}</strong>
      {frozenUntil !== null && `, ${text.versions.frozenUntil(format.instant(secondsOf(frozenUntil)))}`}
    </p>
  );
}
