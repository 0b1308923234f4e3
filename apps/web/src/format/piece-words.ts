import type { Format } from "./format.ts";
import type { BoardSegment } from "../kernels/board-plan.ts";
import type { HeldOrders, PromisedOrders } from "../kernels/held-order.ts";
import type { Text } from "../text/text.ts";

interface Words {
  /** Where it lies: the line, with its row's name before it where rows are of something else. */
  readonly place: string;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly text: Text;
  readonly format: Format;
}

/** A run, change or stop in one sentence. */
export function pieceWords(segment: BoardSegment, { place, held, promised, text, format }: Words): string {
  const { source } = segment;
  const { details } = text;
  const times = `${format.instant(segment.start)}, ${format.span(segment.end - segment.start)}`;
  if (source.kind === "change") return `${place}: ${details.change}, ${times}`;
  if (source.kind === "stop") return `${place}: ${text.board.stop[source.reason]}, ${times}`;
  const late = source.lateSeconds > 0 ? `, ${text.board.late(format.span(source.lateSeconds))}` : "";
  const hold = held.has(source.orderId) ? `, ${text.hold.held}` : "";
  const promise = promised.has(source.orderId) ? `, ${text.holds.mark}` : "";
  return `${place}: ${details.order(source.orderId)}, ${source.mouldName}, ${text.units.pieces(format.count(source.pieces))} ${source.colour.name}, ${times}${late}${hold}${promise}`;
}
