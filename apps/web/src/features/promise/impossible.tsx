import type { PromiseReason } from "@formweek/contracts";
import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import type { Naming } from "../../text/naming.ts";
import { useText, type Text } from "../../text/text.ts";

interface ImpossibleProps {
  readonly reasons: readonly PromiseReason[];
  /** End of the plan, ISO 8601. */
  readonly until: string;
}

/** Nothing can be promised: what stands against it, line by line. */
export function Impossible({ reasons, until }: ImpossibleProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const naming = useNaming();
  return (
    <div className="impossible">
      <h3>
        <Icon name="warn" /> {text.promise.impossible}
      </h3>
      <p>{text.promise.impossibleUntil(format.instant(secondsOf(until)))}</p>
      <ReasonList reasons={reasons} text={text} naming={naming} />
      <p className="hint">{text.promise.whatNow}</p>
    </div>
  );
}

interface ReasonListProps {
  readonly reasons: readonly PromiseReason[];
  readonly text: Text;
  readonly naming: Naming;
}

function ReasonList({ reasons, text, naming }: ReasonListProps): JSX.Element {
  const lines = [...new Set(reasons.map(({ lineId }) => lineId))];
  return (
    <dl className="reason-lines">
      {lines.map((lineId) => (
        <div key={lineId ?? ""}>
          <dt>{lineId === null ? text.promise.everyLine : naming.line(lineId)}</dt>
          {reasons
            .filter((reason) => reason.lineId === lineId)
            .map((reason) => (
              <dd key={`${reason.code} ${reason.text}`}>{reasonWords(reason, text, naming)}</dd>
            ))}
        </div>
      ))}
    </dl>
  );
}

function reasonWords({ cause, ...reason }: PromiseReason, text: Text, naming: Naming): string {
  if (cause?.kind !== "delays another")
    return text.causes.unplanned({ ...reason, ...(cause === undefined ? {} : { cause }) }, naming);
  return cause.bySeconds === null
    ? text.promise.delaysForGood(cause.orderId)
    : text.promise.delaysAnother(cause.orderId, naming.span(cause.bySeconds));
}
