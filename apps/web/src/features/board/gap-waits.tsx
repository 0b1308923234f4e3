import type { GapCause, IdleGap } from "@formweek/scheduler";
import type { JSX } from "react";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import type { ShownGap } from "../../trial/idle-gap.ts";
import { useText, type Text } from "../../text/text.ts";
import { useBoardStore } from "./use-board.ts";
import { useIdleGap } from "./use-idle-gap.ts";

interface GapWaitsProps {
  readonly plan: BoardPlan;
  readonly gap: ShownGap;
  readonly names: PlanNames;
}

/** What a line waits for in a gap, stretch by stretch. */
export function GapWaits({ plan, gap, names }: GapWaitsProps): JSX.Element {
  const { gap: text } = useText();
  const answer = useIdleGap(plan, gap);
  return (
    <section className="late-chain gap-waits" aria-live="polite">
      <h3>{text.title}</h3>
      {answer === "working" && <p className="hint">{text.working}</p>}
      {answer === "not known" && <p className="hint">{text.notKnown}</p>}
      {typeof answer === "object" &&
        (answer.next === null ? (
          <NothingMore plan={plan} gap={answer} />
        ) : (
          <Stretches plan={plan} gap={answer} names={names} />
        ))}
    </section>
  );
}

interface AnswerProps {
  readonly plan: BoardPlan;
  readonly gap: IdleGap;
}

function Stretches({
  plan,
  gap: { next, stretches, besides },
  names,
}: AnswerProps & { readonly names: PlanNames }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const words = (cause: GapCause): string => causeWords(cause, { plan, names, text });
  const longest = Math.max(...stretches.map(({ from, to }) => to - from));
  return (
    <>
      {next !== null && (
        <p className="hint">
          {text.gap.next} <OrderButton orderId={next.orderId} />
        </p>
      )}
      <ol>
        {stretches.map(({ from, to, cause }) => (
          <li key={from} data-kind={cause.kind}>
            <span className="gap-span">{text.gap.until(format.span(to - from), format.instant(to))}</span>
            <span>{words(cause)}</span>
            <span
              className="late-chain-bar gap-bar"
              aria-hidden="true"
              style={{ inlineSize: `${(100 * (to - from)) / longest}%` }}
            />
          </li>
        ))}
      </ol>
      {besides.length > 0 && (
        <>
          <p className="hint">{text.gap.besides}</p>
          <ul className="reasons">
            {besides.map(({ cause, until }) => (
              <li key={`${cause.kind} ${until}`}>
                {text.gap.besideUntil(words(cause), format.instant(until))}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** Orders that are named; the order book has the rest. */
const mostNamed = 5;

function NothingMore({ plan, gap }: AnswerProps): JSX.Element {
  const { gap: text, board } = useText();
  const format = useFormat();
  const { couldRunHere } = gap;
  return (
    <>
      <p>{text.nothingMore}</p>
      <p className="hint">
        {couldRunHere.length === 0 ? text.nothingFits : text.fitHere(couldRunHere.length)}
      </p>
      <ul className="reasons">
        {couldRunHere.slice(0, mostNamed).map((orderId) => {
          const late = plan.orders.get(orderId)?.lateSeconds ?? 0;
          return (
            <li key={orderId}>
              <OrderButton orderId={orderId} />
              {late > 0 && <span className="late-words"> {board.late(format.span(late))}</span>}
            </li>
          );
        })}
      </ul>
    </>
  );
}

function OrderButton({ orderId }: { readonly orderId: string }): JSX.Element {
  const { details } = useText();
  const store = useBoardStore();
  return (
    <button
      type="button"
      className="text-button"
      onClick={() => store.send({ kind: "order sought", orderId })}
    >
      {details.order(orderId)}
    </button>
  );
}

interface CauseContext {
  readonly plan: BoardPlan;
  readonly names: PlanNames;
  readonly text: Text;
}

function causeWords(cause: GapCause, { plan, names, text: { gap: text } }: CauseContext): string {
  const line = (id: string): string => plan.lines.find((each) => each.id === id)?.name ?? id;
  const mould = ({ mouldId, copy }: { readonly mouldId: string; readonly copy: number }): string =>
    names.mould({ mouldId, copy: copy + 1 });
  switch (cause.kind) {
    case "line closed":
    case "no operators":
    case "stop too near":
    case "other work first":
    case "line free":
    case "mould arrives":
      return text.causes[cause.kind];
    case "setters off":
      return text.causes["setters off"](names.team(cause.teamId));
    case "setters busy":
      return text.causes["setters busy"](names.team(cause.teamId), line(cause.lineId));
    case "trolley busy":
      return text.causes["trolley busy"](names.trolley(cause.trolleyId), line(cause.lineId));
    case "mould elsewhere":
      return cause.lot === null
        ? text.causes["mould elsewhere"](mould(cause), line(cause.lineId))
        : text.causes["mould for order"](mould(cause), line(cause.lineId), cause.lot.orderId);
    case "mould carried":
      return text.causes["mould carried"](mould(cause));
    case "mould out of service":
      return text.causes["mould out of service"](mould(cause));
    case "sheet arrival":
      return text.causes["sheet arrival"](names.sheet(cause.sheetId));
    case "earliest start":
      return text.causes["earliest start"](cause.orderId);
    case "pinned start":
      return text.causes["pinned start"](cause.orderId);
  }
}
