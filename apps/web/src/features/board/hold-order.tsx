import type { PinListResponse } from "@formweek/contracts";
import { useRef, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { heldOrders, isKept, plannedPlace } from "../../kernels/held-order.ts";
import { useChangePin, type PinChange } from "../../sync/pins.ts";
import { usualSeconds, useStartRun } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";
import { heldWords } from "./held-words.ts";

interface HoldOrderProps {
  readonly plan: BoardPlan;
  readonly orderId: string;
  /** The lot whose place is offered; null: the first. */
  readonly lot: number | null;
  readonly pins: PinListResponse;
}

/** Holds an order where it runs, or frees it; says that this counts from the next planning run on. */
export function HoldOrder({ plan, orderId, lot, pins }: HoldOrderProps): JSX.Element | null {
  const text = useText();
  const naming = useNaming();
  const format = useFormat();
  const plantId = plan.document.plant.id;
  const change = useChangePin(plantId);
  const start = useStartRun(plantId);
  const stateRef = useRef<HTMLParagraphElement>(null);
  const pin = heldOrders(pins).get(orderId);
  const place = plannedPlace(plan, orderId, lot);
  if (pin === undefined && place === null) return null;
  const put = (wanted: PinChange["place"]): void =>
    change.mutate(
      { orderId, place: wanted, revision: pins.revision },
      // the button that was pressed may go: the focus moves to what came of it
      { onSuccess: () => stateRef.current?.focus() },
    );
  const isNow = (at: string | null): boolean =>
    pin !== undefined && pin.lineId === place?.lineId && pin.start === at;
  const failed = change.error ?? start.error;
  const failure = failed === null ? null : problemInWords(failed, text, naming);
  return (
    <section className="hold" aria-label={text.hold.title}>
      <h3>{text.hold.title}</h3>
      <p role="status" tabIndex={-1} ref={stateRef}>
        {pin === undefined ? (
          text.hold.isFree
        ) : (
          <>
            <Icon name="lock" /> {text.hold.isHeld(heldWords(plan, pin, { text, format }))}{" "}
            {pin.idle !== null ? text.hold.idle : isKept(plan, pin) ? "" : text.hold.notYet}
          </>
        )}
      </p>
      <div className="hold-buttons">
        {place !== null && (
          <button
            type="button"
            className="button"
            disabled={change.isPending || isNow(null)}
            onClick={() => put({ lineId: place.lineId, start: null })}
          >
            {text.hold.onThisLine}
          </button>
        )}
        {place !== null && place.start !== null && (
          <button
            type="button"
            className="button"
            disabled={change.isPending || isNow(place.start)}
            onClick={() => put(place)}
          >
            {text.hold.atThisStart}
          </button>
        )}
        {pin !== undefined && (
          <button type="button" className="button" disabled={change.isPending} onClick={() => put(null)}>
            {text.hold.free}
          </button>
        )}
      </div>
      <p className="hint">{text.hold.nextRun}</p>
      {change.isSuccess && !start.isSuccess && (
        <button
          type="button"
          className="button button-main"
          disabled={start.isPending}
          onClick={() => start.mutate({ kind: "plan", seconds: usualSeconds, favour: null })}
        >
          {text.hold.planNow}
        </button>
      )}
      {failure !== null && (
        <p role="alert" className="late-words">
          {failure.title} {failure.cause} {failure.remedy}
        </p>
      )}
    </section>
  );
}
