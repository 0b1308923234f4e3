import type { Offer, OfferKind, PromiseResponse, ShiftAdded } from "@formweek/contracts";
import type { JSX } from "react";
import { LongHours } from "../../components/long-hours.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import { shiftSpell } from "../../kernels/shift-offer.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";
import { CopyLink } from "./enquiry-form.tsx";
import { OfferPrice } from "./offer-price.tsx";
import { offerSteps } from "./offer-words.ts";
import { Ready } from "./ready.tsx";

interface OfferCardProps {
  readonly board: BoardPlan;
  /** The first answer; null: there is none. */
  readonly first: Offer | null;
  readonly answer: PromiseResponse;
  readonly offer: Offer;
  readonly isChosen: boolean;
  readonly onChoose: (kind: OfferKind) => void;
}

/** One other way: when, at what price, at whose expense, and who decides. */
export function OfferCard({ board, first, offer, isChosen, onChoose }: OfferCardProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { promise } = text;
  return (
    <li className={isChosen ? "offer-card offer-chosen" : "offer-card"}>
      <h3>{promise.kinds[offer.kind]}</h3>
      <Ready at={offer.promised} slackSeconds={offer.slackSeconds} />
      {first !== null && <Against first={first} offer={offer} />}
      {offer.parts.length > 1 && (
        <ul>
          {offer.parts.map((part) => (
            <li key={`${part.lineId} ${part.start}`}>
              {promise.part(
                format.count(part.goodPieces),
                format.instant(secondsOf(part.promised)),
                part.lineName,
              )}
            </li>
          ))}
        </ul>
      )}
      <OfferPrice price={offer.price} />
      {offer.displaced.length > 0 && <Delays offer={offer} />}
      {offer.shift !== null && <ShiftFirst board={board} shift={offer.shift} />}
      <details>
        <summary>{promise.how}</summary>
        <ol className="how-list">
          {offerSteps(offer, { text, format }).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ol>
      </details>
      <div className="tool-group offer-act">
        {offer.holdable ? (
          <button type="button" className="button" disabled={isChosen} onClick={() => onChoose(offer.kind)}>
            {isChosen ? promise.chosen : promise.choose}
          </button>
        ) : (
          <>
            <p className="hint">
              {offer.kind === "first part" ? promise.partsAlone : promise.plannerDecides}
            </p>
            {offer.kind !== "first part" && <CopyLink />}
          </>
        )}
      </div>
    </li>
  );
}

function Against({ first, offer }: { readonly first: Offer; readonly offer: Offer }): JSX.Element {
  const { promise } = useText();
  const format = useFormat();
  const later = secondsOf(offer.promised) - secondsOf(first.promised);
  const span = format.span(later);
  return <p>{later === 0 ? promise.sameTime : later < 0 ? promise.earlier(span) : promise.later(span)}</p>;
}

function Delays({ offer }: { readonly offer: Offer }): JSX.Element {
  const { promise } = useText();
  const format = useFormat();
  return (
    <div>
      <h4>{promise.delays}</h4>
      <ul>
        {offer.displaced.map(({ orderId, customer, kind, by, finish }) => (
          <li key={orderId}>
            <span className="late-words">
              {promise.delay(customer, orderId, format.span(secondsOf(finish) - secondsOf(by)))}
            </span>
            {kind === "forecast" && <span className="hint"> ({promise.forecast})</span>}
          </li>
        ))}
      </ul>
    </div>
  );
}

function ShiftFirst({
  board,
  shift,
}: {
  readonly board: BoardPlan;
  readonly shift: ShiftAdded;
}): JSX.Element {
  const { promise } = useText();
  const format = useFormat();
  const naming = useNaming();
  const clock = zoneClock(board.document.plant.timeZone);
  const spell = shiftSpell(clock, shift.date, shift);
  return (
    <>
      <p>
        {promise.shiftFirst({
          day: spell === null ? shift.date : format.day(spell.start),
          start: shift.start,
          end: shift.end,
          lines: shift.lineIds.map(naming.line).join(", "),
        })}
      </p>
      {spell !== null && <LongHours plan={board} clock={clock} spell={spell} shift={shift} />}
    </>
  );
}
