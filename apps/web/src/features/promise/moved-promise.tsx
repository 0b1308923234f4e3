import { useEffect, useRef, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";

interface MovedPromiseProps {
  /** What the customer was told, and what can be promised now; ISO 8601. */
  readonly told: string;
  readonly now: string;
  readonly isBusy: boolean;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

/** Somebody else was faster: both dates, and the new one ready to be taken by Enter. */
export function MovedPromise({ told, now, isBusy, onTake, onLeave }: MovedPromiseProps): JSX.Element {
  const { holds: text } = useText();
  const format = useFormat();
  const take = useRef<HTMLButtonElement>(null);
  useEffect(() => take.current?.focus(), [now]);
  const later = secondsOf(now) - secondsOf(told);
  const newTime = format.instant(secondsOf(now));
  return (
    <section className="hold-form moved-promise" role="alert">
      <h3>
        <Icon name="warn" /> {text.movedTitle}
      </h3>
      <p>
        {text.movedFrom(format.instant(secondsOf(told)), newTime)}{" "}
        <strong>{text.movedBy(format.span(later))}.</strong> {text.nothingHeld}
      </p>
      <div className="tool-group">
        <button ref={take} type="button" className="button button-main" disabled={isBusy} onClick={onTake}>
          {isBusy ? text.holding : text.takeNew(newTime)}
        </button>
        <button type="button" className="button" onClick={onLeave}>
          {text.lookAgain}
        </button>
      </div>
    </section>
  );
}
