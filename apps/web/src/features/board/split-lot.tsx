import type { PlanDocument } from "@formweek/contracts";
import { useEffect, useId, useRef, useState, type JSX, type SubmitEvent } from "react";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import { dropPlaceAt } from "../../kernels/drop-place.ts";
import { useText } from "../../text/text.ts";
import { useBoard } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface SplitLotProps {
  readonly plan: BoardPlan;
  readonly lot: PlanDocument["lots"][number];
  readonly onDone: () => void;
}

/** How many pieces leave a lot, and for which line; they go there at about the time at which the lot runs. */
export function SplitLot({ plan, lot, onDone }: SplitLotProps): JSX.Element {
  const { edit: text } = useText();
  const { take, isReady } = usePlanEdits();
  const id = useId();
  const first = useRef<HTMLInputElement>(null);
  const refused = useBoard((state) => state.refused).get(plan.orders.get(lot.orderId)?.productId ?? "");
  const lines = plan.lines.filter((line) => refused?.has(line.id) !== true);
  const [pieces, setPieces] = useState(`${Math.floor(lot.pieces / 2)}`);
  const [lineId, setLineId] = useState(lot.lineId);
  useEffect(() => first.current?.focus(), []);

  const split = (event: SubmitEvent): void => {
    event.preventDefault();
    const lineIndex = plan.lines.findIndex((line) => line.id === lineId);
    const instant = secondsOf(lineId === lot.lineId ? lot.end : lot.start);
    const place = dropPlaceAt(plan, null, { lineIndex, instant });
    if (place === null) return;
    const { orderId, lot: number } = lot;
    take({ kind: "split", orderId, lot: number, pieces: Number(pieces), lineId, before: place.before });
    onDone();
  };

  return (
    <form className="split-lot" onSubmit={split}>
      <label htmlFor={`${id}-pieces`}>{text.splitPieces}</label>
      <input
        ref={first}
        id={`${id}-pieces`}
        className="select"
        type="number"
        inputMode="numeric"
        min={1}
        max={lot.pieces - 1}
        required
        value={pieces}
        onChange={(event) => setPieces(event.target.value)}
      />
      <label htmlFor={`${id}-line`}>{text.splitLine}</label>
      <select
        id={`${id}-line`}
        className="select"
        value={lineId}
        onChange={(event) => setLineId(event.target.value)}
      >
        {lines.map((line) => (
          <option key={line.id} value={line.id}>
            {line.name}
          </option>
        ))}
      </select>
      <div className="hold-buttons">
        <button type="submit" className="button button-main" disabled={!isReady}>
          {text.splitNow}
        </button>
        <button type="button" className="button" onClick={onDone}>
          {text.leave}
        </button>
      </div>
    </form>
  );
}
