import type { PinnedOrder } from "@formweek/contracts";
import type { Format } from "../../format/format.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import type { Text } from "../../text/text.ts";

/** Where an order is held, in words: the line by its name, the start in the plant's zone. */
export function heldWords(
  plan: BoardPlan,
  { lineId, start }: PinnedOrder,
  { text, format }: { readonly text: Text; readonly format: Format },
): string {
  const at = start === null ? null : format.instant(secondsOf(start));
  const line = plan.lines.find(({ id }) => id === lineId)?.name ?? lineId;
  if (line === null) return at === null ? "" : text.hold.from(at);
  return at === null ? text.hold.on(line) : text.hold.onFrom(line, at);
}
