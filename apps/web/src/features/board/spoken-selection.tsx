import type { JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import type { HeldOrders } from "../../kernels/held-order.ts";
import type { Selection } from "../../state/board-state.ts";
import { useText, type Text } from "../../text/text.ts";
import { useBoard } from "./use-board.ts";

/** What is selected, in a sentence for screen readers: changes as the keyboard walks. */
export function SpokenSelection({ held }: { readonly held: HeldOrders }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const plan = useBoard((state) => state.plan);
  const selection = useBoard((state) => state.selection);
  const spoken =
    plan === null || selection === null
      ? text.board.nothingSelected
      : sentence(plan, selection, { held, text, format });
  return (
    <div className="unseen" role="status" aria-live="polite">
      {spoken}
    </div>
  );
}

interface Words {
  readonly held: HeldOrders;
  readonly text: Text;
  readonly format: Format;
}

function sentence(plan: BoardPlan, selection: Selection, { held, text, format }: Words): string {
  const { details } = text;
  if (selection.kind === "order") return details.order(selection.orderId);
  const lineIndex =
    selection.kind === "gap" ? selection.lineIndex : plan.segments[selection.index]?.lineIndex;
  const line = plan.lines[lineIndex ?? -1]?.name ?? "";
  if (selection.kind === "gap")
    return `${line}: ${details.gap}, ${format.span(selection.end - selection.start)}`;
  const segment = plan.segments[selection.index];
  if (segment === undefined) return text.board.nothingSelected;
  const { source } = segment;
  const times = `${format.instant(segment.start)}, ${format.span(segment.end - segment.start)}`;
  if (source.kind === "change") return `${line}: ${details.change}, ${times}`;
  if (source.kind === "stop") return `${line}: ${text.board.stop[source.reason]}, ${times}`;
  const late = source.lateSeconds > 0 ? `, ${text.board.late(format.span(source.lateSeconds))}` : "";
  const hold = held.has(source.orderId) ? `, ${text.hold.held}` : "";
  return `${line}: ${details.order(source.orderId)}, ${source.mouldName}, ${text.units.pieces(format.count(source.pieces))} ${source.colour.name}, ${times}${late}${hold}`;
}
