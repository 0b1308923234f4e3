import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { verdictOf } from "./offer-words.ts";

interface ReadyProps {
  /** What the customer is told, ISO 8601. */
  readonly at: string;
  readonly slackSeconds: number | null;
}

const badges = { ok: "badge badge-ok", late: "badge badge-late", plain: "badge badge-plain" } as const;

/** The promised day and time, large, and whether it meets the day wanted. */
export function Ready({ at, slackSeconds }: ReadyProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const verdict = verdictOf(slackSeconds, { text, format });
  const instant = secondsOf(at);
  return (
    <div className="ready">
      <span className="ready-label">{text.promise.ready}</span>
      <strong className="ready-time">
        {format.longDay(instant)} <span className="ready-clock">{format.clock(instant)}</span>
      </strong>
      <span className={badges[verdict.tone]}>
        {verdict.tone !== "plain" && <Icon name={verdict.tone === "ok" ? "check" : "flag"} />} {verdict.words}
      </span>
    </div>
  );
}
