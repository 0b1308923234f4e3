import type { Plant } from "@formweek/capacity-model";
import type { PlanDocument } from "@formweek/contracts";
import { useId, useState, type JSX } from "react";
import type { PlanNames } from "../../format/plan-names.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { homePlace } from "../../kernels/drop-place.ts";
import { useText } from "../../text/text.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface ChooseMouldProps {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly lot: PlanDocument["lots"][number];
  readonly names: PlanNames;
}

/** Which mould makes a lot, at the place where it stands; nothing where its product has one mould only. */
export function ChooseMould({ plan, plant, lot, names }: ChooseMouldProps): JSX.Element | null {
  const { edit: text } = useText();
  const { take, isReady } = usePlanEdits();
  const id = useId();
  const productId = plan.orders.get(lot.orderId)?.productId;
  const product = plant.products.find((each) => each.id === productId);
  const moulds = [...new Set(product?.moulds.map(({ mouldId }) => `${mouldId}`))];
  const now = mouldOfLot(plan, lot);
  const [chosen, setChosen] = useState(now ?? "");
  if (moulds.length < 2) return null;
  const use = (): void => {
    const place = homePlace(plan, lot);
    if (place === null) return;
    const { orderId, lot: number, lineId } = lot;
    take({ kind: "move", orderId, lot: number, lineId, before: place.before, mouldId: chosen });
  };
  return (
    <div className="hold-buttons">
      <label htmlFor={id}>{text.mould}</label>
      <select id={id} className="select" value={chosen} onChange={(event) => setChosen(event.target.value)}>
        {moulds.map((mouldId) => (
          <option key={mouldId} value={mouldId}>
            {names.mouldAlone(mouldId)}
          </option>
        ))}
      </select>
      <button type="button" className="button" disabled={!isReady || chosen === now} onClick={use}>
        {text.mouldNow}
      </button>
    </div>
  );
}

function mouldOfLot(
  { runsOfOrder }: BoardPlan,
  { orderId, lot }: PlanDocument["lots"][number],
): string | null {
  for (const { source } of runsOfOrder.get(orderId) ?? [])
    if (source.kind === "run" && source.lot === lot) return source.mould?.mouldId ?? null;
  return null;
}
