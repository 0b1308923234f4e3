import type { Hold } from "@formweek/contracts";
import { useEffect, useRef, type JSX } from "react";
import { Link } from "wouter";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";

interface HeldNoteProps {
  readonly hold: Hold;
  readonly onNext: () => void;
}

/** It is held: what to tell the customer, and on to the next one. */
export function HeldNote({ hold, onNext }: HeldNoteProps): JSX.Element {
  const { holds: text } = useText();
  const format = useFormat();
  const next = useRef<HTMLButtonElement>(null);
  useEffect(() => next.current?.focus(), []);
  const promised = secondsOf(hold.promised);
  return (
    <section className="answer answer-held">
      <p role="status">
        <Icon name="check" /> {text.done(hold.customer, format.instant(secondsOf(hold.until)))}
      </p>
      <p className="ready-time">{text.told(`${format.longDay(promised)} ${format.clock(promised)}`)}</p>
      <div className="tool-group">
        <button ref={next} type="button" className="button button-main" onClick={onNext}>
          {text.next}
        </button>
        {hold.finish !== null && (
          <Link href={`/?order=${encodeURIComponent(hold.orderId)}`} className="button">
            {text.onBoard}
          </Link>
        )}
      </div>
    </section>
  );
}
