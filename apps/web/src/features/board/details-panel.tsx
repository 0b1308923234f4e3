import type { Plant } from "@formweek/capacity-model";
import type { PinListResponse } from "@formweek/contracts";
import type { JSX, ReactNode } from "react";
import { Icon } from "../../components/icon.tsx";
import type { BoardRows } from "../../kernels/board-rows.ts";
import type { PromisedOrders } from "../../kernels/held-order.ts";
import { rowsOf } from "../../state/board-view.ts";
import type { Selection } from "../../state/board-state.ts";
import { useText } from "../../text/text.ts";
import { ChangeDetails } from "./change-details.tsx";
import { GapDetails } from "./gap-details.tsx";
import { LineDetails } from "./line-details.tsx";
import { OrderDetails } from "./order-details.tsx";
import type { PlanNames } from "../../format/plan-names.ts";
import { useBoard, useBoardStore } from "./use-board.ts";

interface DetailsPanelProps {
  /** Undefined until the server has told. */
  readonly plant: Plant | undefined;
  readonly names: PlanNames;
  /** Which orders are held; undefined until the server has told. */
  readonly pins: PinListResponse | undefined;
  readonly promised: PromisedOrders;
}

/** Tells about what is selected on the board; away when nothing is. */
export function DetailsPanel({ plant, names, pins, promised }: DetailsPanelProps): JSX.Element | null {
  const text = useText();
  const store = useBoardStore();
  const rows = useBoard(rowsOf);
  const selection = useBoard((state) => state.selection);
  if (rows === null || selection === null) return null;
  return (
    <aside className="details" aria-label={text.board.details}>
      <button
        type="button"
        className="button button-icon details-close"
        aria-label={text.details.close}
        onClick={() => store.send({ kind: "selected", selection: null })}
      >
        <Icon name="close" />
      </button>
      {contentOf(rows, selection, { plant, names, pins, promised })}
    </aside>
  );
}

function contentOf(
  rows: BoardRows,
  selection: Selection,
  { plant, names, pins, promised }: DetailsPanelProps,
): ReactNode {
  const { plan } = rows;
  if (selection.kind === "gap") return <GapDetails rows={rows} gap={selection} names={names} plant={plant} />;
  if (selection.kind === "line")
    return <LineDetails key={selection.lineId} plan={plan} lineId={selection.lineId} plant={plant} />;
  if (selection.kind === "order")
    return (
      <OrderDetails
        plan={plan}
        orderId={selection.orderId}
        run={null}
        names={names}
        pins={pins}
        hold={promised.get(selection.orderId)}
        plant={plant}
      />
    );
  const segment = plan.segments[selection.index];
  if (segment === undefined) return null;
  if (segment.source.kind === "change") {
    return <ChangeDetails plan={plan} segment={segment} change={segment.source} names={names} />;
  }
  return (
    <OrderDetails
      plan={plan}
      orderId={segment.source.orderId}
      run={segment}
      names={names}
      pins={pins}
      hold={promised.get(segment.source.orderId)}
      plant={plant}
    />
  );
}
