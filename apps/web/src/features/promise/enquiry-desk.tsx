import type { Plant } from "@formweek/capacity-model";
import type { Hold, PlanResponse, PromiseEnquiry } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { emptyDraft } from "../../kernels/enquiry-draft.ts";
import { usePromise } from "../../sync/promises.ts";
import { useText } from "../../text/text.ts";
import { AnswerFailure } from "./answer-failure.tsx";
import { AnswerView } from "./answer-view.tsx";
import { EnquiryForm } from "./enquiry-form.tsx";
import { HeldNote } from "./held-note.tsx";
import { HoldList } from "./hold-list.tsx";
import { useEnquiry } from "./use-enquiry.ts";

interface EnquiryDeskProps {
  readonly plan: PlanResponse;
  readonly plant: Plant;
}

/** One enquiry: what is asked for, its answer, and what is held already. */
export function EnquiryDesk({ plan, plant }: EnquiryDeskProps): JSX.Element {
  const { promise: text } = useText();
  const open = useEnquiry(plant.products);
  const [held, setHeld] = useState<{ readonly hold: Hold; readonly enquiry: PromiseEnquiry } | null>(null);
  const answer = usePromise(plant.id, open.enquiry);
  const heldNow = held !== null && held.enquiry === open.enquiry ? held.hold : null;
  return (
    <div className="promise-desk">
      <div className="promise-main">
        <h2>{text.lead}</h2>
        <EnquiryForm products={plant.products} open={open} />
        {heldNow !== null ? (
          <HeldNote
            hold={heldNow}
            onNext={() => {
              setHeld(null);
              open.change(emptyDraft);
            }}
          />
        ) : open.enquiry === null ? (
          <p className="answer answer-empty">{text.waiting}</p>
        ) : answer.data !== undefined && answer.error === null ? (
          <AnswerView
            plan={plan}
            plant={plant}
            enquiry={open.enquiry}
            answer={answer.data}
            isOld={answer.isPlaceholderData}
            onHeld={(hold) => {
              if (open.enquiry !== null) setHeld({ hold, enquiry: open.enquiry });
            }}
          />
        ) : answer.error !== null ? (
          <AnswerFailure
            cause={answer.error}
            products={plant.products}
            onProduct={(product) => open.change({ product })}
            onRetry={() => void answer.refetch()}
          />
        ) : (
          <p className="answer answer-empty" role="status">
            <span className="loading-web" aria-hidden="true" /> {text.asking}
          </p>
        )}
        <details className="glossary">
          <summary>{text.words}</summary>
          <dl>
            {text.glossary.map(([word, meaning]) => (
              <div key={word}>
                <dt>{word}</dt>
                <dd>{meaning}</dd>
              </div>
            ))}
          </dl>
        </details>
      </div>
      <HoldList plantId={plant.id} />
    </div>
  );
}
