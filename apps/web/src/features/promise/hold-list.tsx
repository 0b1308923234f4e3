import type { Hold } from "@formweek/contracts";
import { useRef, useState, type JSX } from "react";
import { FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import { personName } from "../../format/person.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useHolds } from "../../sync/holds.ts";
import { useText } from "../../text/text.ts";
import { HoldItem } from "./hold-item.tsx";
import { useNow } from "./use-now.ts";

/** What is held for customers, what runs out first on top; then what became of the last ones. */
export function HoldList({ plantId }: { readonly plantId: string }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { data, error, refetch } = useHolds(plantId);
  const now = useNow();
  const title = useRef<HTMLHeadingElement>(null);
  const [told, setTold] = useState("");
  const { holds } = text;
  const held = data?.holds.filter(({ state }) => state === "held") ?? [];
  const ended = data?.holds.filter(({ state }) => state !== "held") ?? [];
  return (
    <section className="holds" aria-label={holds.title}>
      <h2 ref={title} tabIndex={-1}>
        {holds.title}
      </h2>
      <p role="status" className="hold-told">
        {told}
      </p>
      {data === undefined && error === null && <LoadingNotice />}
      {data === undefined && error !== null && (
        <FailureNotice isInner cause={error} onRetry={() => void refetch()} />
      )}
      {data !== undefined && held.length === 0 && <p className="hint">{holds.none}</p>}
      {held.length > 0 && (
        <ul className="hold-items" aria-label={holds.list}>
          {held.map((hold) => (
            <HoldItem
              key={hold.holdId}
              plantId={plantId}
              hold={hold}
              now={now}
              onEnded={(words) => {
                setTold(words);
                // the button that was pressed goes with its hold
                title.current?.focus();
              }}
            />
          ))}
        </ul>
      )}
      {ended.length > 0 && (
        <details>
          <summary>{holds.ended(format.count(ended.length))}</summary>
          <ul className="hold-ended" aria-label={holds.endedList}>
            {ended.map((hold) => (
              <EndedHold key={hold.holdId} hold={hold} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

function EndedHold({ hold }: { readonly hold: Hold }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { holds } = text;
  const at = hold.endedAt === null ? "" : format.instant(secondsOf(hold.endedAt));
  const state = holds.states[hold.state];
  return (
    <li>
      <strong>{hold.customer}</strong>, {hold.productName}, {text.units.pieces(format.count(hold.pieces))}
      <br />
      <span className="hint">
        {hold.orderId}:{" "}
        {hold.endedBy === null
          ? holds.endedAt(state, at)
          : holds.endedBy(state, at, personName(hold.endedBy, text))}
      </span>
    </li>
  );
}
