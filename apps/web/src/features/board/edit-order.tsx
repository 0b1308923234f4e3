import type { Plant } from "@formweek/capacity-model";
import type { LotName } from "@formweek/contracts";
import { useState, type JSX } from "react";
import type { PlanNames } from "../../format/plan-names.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { ChooseMould } from "./choose-mould.tsx";
import { SplitLot } from "./split-lot.tsx";
import { useBoardStore } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface EditOrderProps {
  readonly plan: BoardPlan;
  readonly orderId: string;
  /** The lot that is selected; null: the first. */
  readonly lot: number | null;
  /** Undefined until the server has told. */
  readonly plant: Plant | undefined;
  readonly names: PlanNames;
}

/** What a planner can do by hand with an order: move, take out, put back, split and join it. */
export function EditOrder({ plan, orderId, lot, plant, names }: EditOrderProps): JSX.Element | null {
  const { edit: text } = useText();
  const store = useBoardStore();
  const { take, isReady } = usePlanEdits();
  const [isSplitting, setSplitting] = useState(false);
  const order = plan.orders.get(orderId);
  const lots = plan.document.lots.filter((each) => each.orderId === orderId);
  const chosen = lots.find((each) => each.lot === (lot ?? 0)) ?? lots[0];
  if (order === undefined || order.state === "covered by stock") return null;
  const isOut = lots.length === 0;
  return (
    <section className="hold" aria-label={text.title}>
      <h3>{text.title}</h3>
      <div className="hold-buttons">
        {chosen !== undefined && (
          <button
            type="button"
            className="button"
            disabled={!isReady}
            onClick={() => carryByKeys(plan, chosen, store.send)}
          >
            {text.move}
          </button>
        )}
        {chosen !== undefined && !isSplitting && (
          <button type="button" className="button" disabled={!isReady} onClick={() => setSplitting(true)}>
            {text.split}
          </button>
        )}
        {lots.length > 1 && (
          <button
            type="button"
            className="button"
            disabled={!isReady}
            onClick={() => take({ kind: "join", orderId })}
          >
            {text.join}
          </button>
        )}
        <button
          type="button"
          className="button"
          disabled={!isReady}
          onClick={() => take({ kind: isOut ? "put back" : "take out", orderId })}
        >
          {isOut ? text.putBack : text.takeOut}
        </button>
      </div>
      {chosen !== undefined && isSplitting && (
        <SplitLot plan={plan} lot={chosen} onDone={() => setSplitting(false)} />
      )}
      {chosen !== undefined && plant !== undefined && (
        <ChooseMould
          key={`${plan.planId} ${chosen.lot}`}
          plan={plan}
          plant={plant}
          lot={chosen}
          names={names}
        />
      )}
      {chosen !== undefined && <p className="hint">{text.moveHint}</p>}
    </section>
  );
}

/** Takes a lot up for the keyboard, and brings the focus to the board where the arrows move it. */
function carryByKeys(
  plan: BoardPlan,
  { orderId, lot }: LotName,
  send: ReturnType<typeof useBoardStore>["send"],
): void {
  const run = plan.runsOfOrder
    .get(orderId)
    ?.find(({ source }) => source.kind !== "change" && source.lot === lot);
  if (run === undefined) return;
  document.querySelector<HTMLElement>(".board-canvas")?.focus();
  send({ kind: "selected", selection: { kind: "segment", index: run.index } });
  send({ kind: "selected taken up" });
}
