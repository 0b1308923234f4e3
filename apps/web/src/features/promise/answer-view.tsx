import type { Plant } from "@formweek/capacity-model";
import type { Hold, Offer, PlanResponse, PromiseEnquiry, PromiseResponse } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useAlternatives } from "../../sync/promises.ts";
import { useText } from "../../text/text.ts";
import { Alternatives } from "./alternatives.tsx";
import { HoldForm } from "./hold-form.tsx";
import { Impossible } from "./impossible.tsx";
import { OfferAnswer } from "./offer-answer.tsx";
import { Ready } from "./ready.tsx";
import { verdictOf } from "./offer-words.ts";

interface AnswerViewProps {
  readonly plan: PlanResponse;
  readonly plant: Plant;
  readonly enquiry: PromiseEnquiry;
  readonly answer: PromiseResponse;
  /** The answer is of what was asked before; the new one is on its way. */
  readonly isOld: boolean;
  readonly onHeld: (hold: Hold) => void;
}

/** The answer to one enquiry, then other ways to meet it. */
export function AnswerView(props: AnswerViewProps): JSX.Element {
  const { plant, enquiry, answer, isOld } = props;
  const { promise: text } = useText();
  const others = useAlternatives(plant.id, isOld ? null : enquiry);
  const [choice, setChoice] = useState<{ readonly kind: Offer["kind"]; readonly of: PromiseEnquiry } | null>(
    null,
  );
  const { outcome } = answer;
  const first = outcome.status === "promised" ? outcome.offer : null;
  const offers = isOld ? [] : (others.data?.offers ?? []);
  const chosen = choice?.of === enquiry ? offers.find(({ kind }) => kind === choice.kind) : undefined;
  const offer = chosen ?? first;
  return (
    <>
      <section className={isOld ? "answer answer-old" : "answer"} aria-label={text.answer} aria-busy={isOld}>
        <BaseNotes answer={answer} />
        {offer !== null ? (
          <OfferAnswer {...props} offer={offer} isFirst={offer === first}>
            {offer !== first && (
              <button type="button" className="button" onClick={() => setChoice(null)}>
                {text.backToFirst}
              </button>
            )}
          </OfferAnswer>
        ) : outcome.status === "from stock" ? (
          <FromStock {...props} promised={outcome.promised} />
        ) : outcome.status === "impossible" ? (
          <Impossible reasons={outcome.reasons} until={answer.base.until} />
        ) : null}
      </section>
      {outcome.status !== "from stock" && (
        <Alternatives
          {...{ plan: props.plan, first, answer, chosen: chosen?.kind ?? null }}
          others={isOld ? undefined : others.data}
          error={isOld ? null : others.error}
          onRetry={() => void others.refetch()}
          onChoose={(kind) => setChoice({ kind, of: enquiry })}
        />
      )}
      <span className="unseen" role="status">
        {isOld ? "" : <SpokenAnswer answer={answer} />}
      </span>
    </>
  );
}

function FromStock({
  plant,
  enquiry,
  answer,
  isOld,
  onHeld,
  promised,
}: AnswerViewProps & { readonly promised: string }): JSX.Element {
  const { promise: text } = useText();
  const { wantedAt } = answer.enquiry;
  const slack = wantedAt === null ? null : secondsOf(wantedAt) - secondsOf(promised);
  return (
    <div className="answer-top">
      <div>
        <Ready at={promised} slackSeconds={slack} />
        <p>{text.fromStock}</p>
      </div>
      <HoldForm
        plantId={plant.id}
        enquiry={enquiry}
        offer={{ kind: "whole", promised }}
        isReady={!isOld}
        onHeld={onHeld}
      />
    </div>
  );
}

/** The answer in a sentence, for who does not see it. */
function SpokenAnswer({ answer: { outcome } }: { readonly answer: PromiseResponse }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { promise } = text;
  switch (outcome.status) {
    case "impossible":
      return <>{promise.impossible}</>;
    case "from stock":
      return (
        <>
          {promise.ready} {format.instant(secondsOf(outcome.promised))}. {promise.fromStock}
        </>
      );
    case "promised":
      return (
        <>
          {promise.ready} {format.instant(secondsOf(outcome.offer.promised))},{" "}
          {verdictOf(outcome.offer.slackSeconds, { text, format }).words}
        </>
      );
  }
}

/** What the answer does not look after. */
function BaseNotes({ answer: { base } }: { readonly answer: PromiseResponse }): JSX.Element | null {
  const { promise: text } = useText();
  const notes = [
    ...(base.unplannedHolds.length > 0 ? [text.unplannedHolds(base.unplannedHolds.join(", "))] : []),
    ...(base.unplannedOrders > 0 ? [text.unplannedOrders(base.unplannedOrders)] : []),
    ...(base.sameInputs ? [] : [text.otherInputs]),
  ];
  if (notes.length === 0) return null;
  return (
    <ul className="answer-notes">
      {notes.map((note) => (
        <li key={note}>
          <Icon name="warn" /> {note}
        </li>
      ))}
    </ul>
  );
}
