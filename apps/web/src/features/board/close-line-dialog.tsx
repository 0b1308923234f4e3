import type { Plant } from "@formweek/capacity-model";
import { useId, useState, type JSX } from "react";
import type { BoardPlan, BoardSpell } from "../../kernels/board-plan.ts";
import { instantOfWallText, wallText } from "../../kernels/wall-text.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";
import { HoursDialog } from "./hours-dialog.tsx";

interface CloseLineDialogProps {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly lineId: string;
  readonly within: BoardSpell | null;
  readonly onTaken: () => void;
  readonly onClose: () => void;
}

const shiftSeconds = 8 * 3600;

/** Which line stands, from when to when, and why; with the orders that run there then. */
export function CloseLineDialog(props: CloseLineDialogProps): JSX.Element {
  const { plan, plant, within, onTaken, onClose } = props;
  const { hours: text } = useText();
  const id = useId();
  const clock = zoneClock(plan.document.plant.timeZone);
  const [lineId, setLineId] = useState(props.lineId);
  const [from, setFrom] = useState(wallText(clock, within?.start ?? plan.startAt));
  const [to, setTo] = useState(wallText(clock, within?.end ?? plan.startAt + shiftSeconds));
  const [reason, setReason] = useState("");
  const closure = { lineId, from, to, reason: reason.trim() };
  const isFilled = from !== "" && to !== "" && closure.reason !== "";
  const hit = ordersWithin(plan, lineId, {
    start: instantOfWallText(clock, from) ?? 0,
    end: instantOfWallText(clock, to) ?? 0,
  });
  return (
    <HoursDialog
      title={text.closeTitle}
      action={text.closeNow}
      edit={isFilled ? { kind: "close line", closure } : null}
      onTaken={onTaken}
      onClose={onClose}
    >
      <div className="hours-fields">
        <label htmlFor={`${id}-line`}>{text.line}</label>
        <select
          id={`${id}-line`}
          className="select"
          value={lineId}
          onChange={(event) => setLineId(event.target.value)}
        >
          {plant.lines.map((line) => (
            <option key={line.id} value={line.id}>
              {line.name}
            </option>
          ))}
        </select>
        <label htmlFor={`${id}-from`}>{text.from}</label>
        <input
          id={`${id}-from`}
          className="select"
          type="datetime-local"
          required
          value={from}
          onChange={(event) => setFrom(event.target.value)}
        />
        <label htmlFor={`${id}-to`}>{text.to}</label>
        <input
          id={`${id}-to`}
          className="select"
          type="datetime-local"
          required
          value={to}
          onChange={(event) => setTo(event.target.value)}
        />
        <label htmlFor={`${id}-reason`}>{text.reason}</label>
        <input
          id={`${id}-reason`}
          className="select"
          type="text"
          required
          maxLength={120}
          value={reason}
          placeholder={text.reasonHint}
          onChange={(event) => setReason(event.target.value)}
        />
      </div>
      <p className="hint">{hit.length === 0 ? text.hitsNothing : text.hits(hit.join(", "))}</p>
      <p className="hint">{text.closeHint}</p>
    </HoursDialog>
  );
}

/** Orders that run or change on the line in the spell, in order of time. */
function ordersWithin(plan: BoardPlan, lineId: string, spell: BoardSpell): readonly string[] {
  const segments = plan.lines.find(({ id }) => id === lineId)?.segments ?? [];
  const orders = segments.flatMap(({ source, start, end }) =>
    source.kind === "run" && start < spell.end && end > spell.start ? [source.orderId] : [],
  );
  return [...new Set(orders)];
}
