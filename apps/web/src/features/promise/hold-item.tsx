import type { Hold } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { Link } from "wouter";
import { FailureWords } from "../../components/failure-words.tsx";
import { Icon } from "../../components/icon.tsx";
import { personName } from "../../format/person.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useReleaseHold } from "../../sync/holds.ts";
import { useText } from "../../text/text.ts";
import { OrderHold } from "./order-hold.tsx";

interface HoldItemProps {
  readonly plantId: string;
  readonly hold: Hold;
  /** Seconds since the epoch. */
  readonly now: number;
  /** It ended here; what came of it, in words. */
  readonly onEnded: (words: string) => void;
}

/** One hold with the time that it has left, and the two ways in which people end it. */
export function HoldItem({ plantId, hold, now, onEnded }: HoldItemProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const release = useReleaseHold(plantId);
  const [wish, setWish] = useState<"release" | "order" | null>(null);
  const { holds } = text;
  const at = (iso: string): string => format.instant(secondsOf(iso));
  const left = secondsOf(hold.until) - now;
  return (
    <li className="hold-item">
      <p>
        <strong>{hold.customer}</strong> <span className="hint">{hold.orderId}</span>
      </p>
      <p>
        {hold.productName}, {text.units.pieces(format.count(hold.pieces))}
      </p>
      <p>
        {holds.promised} <strong>{at(hold.promised)}</strong>
      </p>
      <p className={left < 3600 ? "hold-short" : undefined}>
        {holds.left}: {left <= 0 ? holds.over : holds.leftFor(format.span(left), at(hold.until))}
      </p>
      <p className="hint">
        {holds.who}: {personName(hold.heldBy, text)}, {at(hold.heldAt)}
      </p>
      {hold.keepsPromise === false && (
        <p className="late-words">
          <Icon name="warn" /> {hold.finish === null ? holds.noPlace : holds.notKept(at(hold.finish))}
        </p>
      )}
      {wish === "order" ? (
        <OrderHold plantId={plantId} hold={hold} onEnded={onEnded} onClose={() => setWish(null)} />
      ) : (
        <div className="tool-group">
          <button
            type="button"
            className="button"
            aria-label={holds.orderOf(hold.customer, hold.orderId)}
            onClick={() => setWish("order")}
          >
            {holds.order}
          </button>
          <button
            type="button"
            className={wish === "release" ? "button button-main" : "button"}
            aria-label={wish === "release" ? undefined : holds.releaseOf(hold.customer, hold.orderId)}
            disabled={release.isPending}
            onClick={() => {
              if (wish !== "release") return setWish("release");
              release.mutate(hold, { onSuccess: () => onEnded(holds.released(hold.customer)) });
            }}
            onBlur={() => setWish(null)}
          >
            {wish === "release" ? holds.releaseSure : holds.release}
          </button>
          {hold.finish !== null && (
            <Link href={`/?order=${encodeURIComponent(hold.orderId)}`} className="button">
              {holds.onBoard}
            </Link>
          )}
        </div>
      )}
      {release.error !== null && <FailureWords cause={release.error} />}
    </li>
  );
}
