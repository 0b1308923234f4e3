import type { Hold, HoldRequest, OfferKind, PromiseEnquiry } from "@formweek/contracts";
import { useId, useRef, useState, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { useFormat } from "../../format/use-format.ts";
import { latestHoldText, usualHoldEnd } from "../../kernels/hold-time.ts";
import { instantOfWallText, wallText, wireText } from "../../kernels/wall-text.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { newHoldKey } from "../../sync/hold-key.ts";
import { useHold } from "../../sync/holds.ts";
import { nowSeconds } from "../../sync/now.ts";
import { usePlant } from "../../sync/queries.ts";
import { useText } from "../../text/text.ts";
import { MovedPromise } from "./moved-promise.tsx";

interface HoldFormProps {
  readonly plantId: string;
  readonly enquiry: PromiseEnquiry;
  readonly offer: { readonly kind: OfferKind; readonly promised: string };
  /** The offer is of this enquiry, and may be held. */
  readonly isReady: boolean;
  readonly onHeld: (hold: Hold) => void;
}

/** Holds an offer for a customer until a time; where somebody else took the hours first, the new date is one key away. */
export function HoldForm({ plantId, enquiry, offer, isReady, onHeld }: HoldFormProps): JSX.Element {
  const { holds: text } = useText();
  const format = useFormat();
  const id = useId();
  const clock = zoneClock(usePlant(plantId).data?.plant.timeZone ?? "UTC");
  const hold = useHold(plantId);
  const [customer, setCustomer] = useState("");
  const [until, setUntil] = useState(() => wallText(clock, usualHoldEnd(clock, nowSeconds())));
  const [fault, setFault] = useState<"customer" | "until" | null>(null);
  const sent = useRef<HoldRequest | null>(null);
  const untilAt = instantOfWallText(clock, until);
  const moved = hold.error?.problem.code === "promise-moved" ? hold.error.problem.offer : undefined;

  const send = (promised: string): void => {
    const now = nowSeconds();
    const isUntilGood = untilAt !== null && untilAt > now && until <= latestHoldText(clock, now);
    if (customer.trim() === "") return setFault("customer");
    if (!isUntilGood) return setFault("until");
    setFault(null);
    const wish = {
      enquiry,
      offer: { kind: offer.kind, promised },
      customer: customer.trim(),
      until: wireText(untilAt),
    };
    // asked for again after a silent server, it is the same hold
    const { key, ...before } = sent.current ?? { key: "" };
    const isSame = JSON.stringify(before) === JSON.stringify(wish);
    sent.current = { ...wish, key: isSame ? key : newHoldKey() };
    const { key: ownKey } = sent.current;
    hold.mutate({ key: ownKey, ...wish }, { onSuccess: (changed) => onHeld(changed.hold) });
  };

  if (moved !== undefined)
    return (
      <MovedPromise
        told={sent.current?.offer.promised ?? offer.promised}
        now={moved.promised}
        isBusy={hold.isPending}
        onTake={() => send(moved.promised)}
        onLeave={() => hold.reset()}
      />
    );
  return (
    <form
      className="hold-form"
      aria-label={text.hold}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady && !hold.isPending) send(offer.promised);
      }}
    >
      <h3>{text.hold}</h3>
      <p className="hint">{text.holdHint}</p>
      <label htmlFor={`${id}-customer`}>{text.customer}</label>
      <input
        id={`${id}-customer`}
        className="select"
        type="text"
        maxLength={120}
        autoComplete="off"
        value={customer}
        aria-invalid={fault === "customer"}
        aria-describedby={`${id}-fault`}
        onChange={(event) => setCustomer(event.target.value)}
      />
      <label htmlFor={`${id}-until`}>{text.until}</label>
      <input
        id={`${id}-until`}
        className="select"
        type="datetime-local"
        value={until}
        aria-invalid={fault === "until"}
        aria-describedby={`${id}-fault`}
        onChange={(event) => setUntil(event.target.value)}
      />
      <p id={`${id}-fault`} className="late-words" role="alert">
        {fault === null ? "" : fault === "customer" ? text.customerMissing : text.untilWrong}
      </p>
      <button type="submit" className="button button-main" disabled={!isReady || hold.isPending}>
        {hold.isPending ? text.holding : text.holdNow(untilAt === null ? "…" : format.instant(untilAt))}
      </button>
      {hold.error !== null && <FailureWords cause={hold.error} />}
    </form>
  );
}
