import type { Plant } from "@formweek/capacity-model";
import type { Hold, Offer, PlanResponse, PromiseEnquiry, PromiseResponse } from "@formweek/contracts";
import type { JSX, ReactNode } from "react";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";
import { HoldForm } from "./hold-form.tsx";
import { offerSteps, quantityWords, rateWords } from "./offer-words.ts";
import { Ready } from "./ready.tsx";
import { RunPicture } from "./run-picture.tsx";
import { Sureness } from "./sureness.tsx";

interface OfferAnswerProps {
  readonly plan: PlanResponse;
  readonly plant: Plant;
  readonly enquiry: PromiseEnquiry;
  readonly answer: PromiseResponse;
  readonly isOld: boolean;
  readonly onHeld: (hold: Hold) => void;
  readonly offer: Offer;
  /** It is the first answer, not one of the other ways. */
  readonly isFirst: boolean;
  readonly children: ReactNode;
}

/** An offer in full: the day, how sure it is, how it comes about, and the way to hold it. */
export function OfferAnswer(props: OfferAnswerProps): JSX.Element {
  const { plan, plant, enquiry, answer, isOld, onHeld, offer, isFirst, children } = props;
  const text = useText();
  const format = useFormat();
  const { promise } = text;
  const isDrawn = plan.planId === answer.base.planId && offer.shift === null;
  const rates = [...new Set(offer.parts.map(({ rate }) => rateWords(rate, { text, format })))];
  return (
    <>
      {!isFirst && (
        <p className="tool-group">
          <strong>{promise.kinds[offer.kind]}</strong> {children}
        </p>
      )}
      <div className="answer-top">
        <div>
          <Ready at={offer.promised} slackSeconds={offer.slackSeconds} />
          <Sureness
            plantId={plant.id}
            enquiry={isOld ? null : enquiry}
            offer={offer}
            wantedAt={answer.enquiry.wantedAt}
          />
        </div>
        <HoldForm
          plantId={plant.id}
          enquiry={enquiry}
          offer={{ kind: offer.kind, promised: offer.promised }}
          isReady={!isOld && offer.holdable}
          onHeld={onHeld}
        />
      </div>
      {isDrawn && (
        <RunPicture document={plan.document} plant={plant} enquiry={answer.enquiry} offer={offer} />
      )}
      <div className="answer-how">
        <div>
          <h3>{promise.how}</h3>
          <ol className="how-list">
            {[
              ...quantityWords(answer.quantity, { text, format }),
              ...offerSteps(offer, { text, format }),
            ].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ol>
        </div>
        <div>
          <h3>{promise.rate}</h3>
          {rates.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      </div>
    </>
  );
}
