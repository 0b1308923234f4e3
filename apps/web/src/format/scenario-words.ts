import type { Plant } from "@formweek/capacity-model";
import type { BookedOrder, ScenarioChange, ShiftAdded } from "@formweek/contracts";
import { secondsOf } from "../kernels/board-plan.ts";
import { instantOfWallText } from "../kernels/wall-text.ts";
import type { ZoneClock } from "../kernels/zone-clock.ts";
import type { Text } from "../text/text.ts";
import type { Format } from "./format.ts";
import { planNames } from "./plan-names.ts";

/** What changes are told with. */
export interface ScenarioWords {
  readonly plant: Plant;
  /** Orders of the book by number; an order that is not there is told by its number alone. */
  readonly orders: ReadonlyMap<string, BookedOrder>;
  readonly clock: ZoneClock;
  readonly text: Text;
  readonly format: Format;
}

/** A change of a scenario as one plain sentence. */
export function scenarioChangeWords(change: ScenarioChange, words: ScenarioWords): string {
  const { plant, text, format } = words;
  const { sentences } = text.whatIf;
  const names = planNames(plant, text);
  switch (change.kind) {
    case "close line": {
      const { lineId, from, to, reason } = change.closure;
      return sentences.closeLine(names.line(lineId), localSpell(from, to, words), reason);
    }
    case "add shift": {
      const { date, start, end } = change.shift;
      // noon: the day is its own in every zone that plants lie in
      const day = format.day(secondsOf(`${date}T12:00:00Z`));
      return sentences.addShift(day, start, end, whoComes(change.shift, words));
    }
    case "more copies":
      return sentences.moreCopies(change.more, names.mouldAlone(change.mouldId));
    case "another team":
      return sentences.anotherTeam(
        change.name,
        names.team(change.likeTeamId),
        spellWords(secondsOf(change.from), secondsOf(change.to), format),
      );
    case "cancel order":
      return sentences.cancelOrder(change.orderId, known(change.orderId, words));
    case "rush order": {
      const { id, productId, pieces, dueAt } = change.order;
      const product = plant.products.find((each) => each.id === productId)?.name ?? productId;
      const due = format.instant(secondsOf(dueAt));
      return sentences.rushOrder(id, text.units.pieces(format.count(pieces)), product, due);
    }
    case "change order":
      return sentences.changeOrder(change.orderId, otherTerms(change, words).join(", "));
    case "cycle rate":
      return sentences.cycleRate(
        names.mouldAlone(change.mouldId),
        names.line(change.lineId),
        text.units.cyclesPerMin(format.figure(change.cyclesPerMin)),
      );
  }
}

function whoComes(
  { lineIds, teamIds, operators }: ShiftAdded,
  { plant, text, format }: ScenarioWords,
): string {
  const names = planNames(plant, text);
  const heads = operators.reduce((sum, { heads: count }) => sum + count, 0);
  return [
    ...lineIds.map(names.line),
    ...teamIds.map(names.team),
    ...(heads > 0 ? [text.whatIf.sentences.operators(format.figure(heads))] : []),
  ].join(", ");
}

function otherTerms(
  { orderId, pieces, dueAt }: Extract<ScenarioChange, { readonly kind: "change order" }>,
  { orders, text, format }: ScenarioWords,
): readonly string[] {
  const { sentences } = text.whatIf;
  const order = orders.get(orderId);
  const parts: string[] = [];
  if (pieces !== null) {
    const was = order === undefined ? null : format.count(order.pieces);
    parts.push(sentences.pieces(text.units.pieces(format.count(pieces)), was));
  }
  if (dueAt !== null) {
    const was = order === undefined ? null : format.instant(secondsOf(order.dueAt));
    parts.push(sentences.due(format.instant(secondsOf(dueAt)), was));
  }
  return parts;
}

/** What an order of the book is; null where it is not in the book. */
function known(orderId: string, { orders, plant, text, format }: ScenarioWords): string | null {
  const order = orders.get(orderId);
  if (order === undefined) return null;
  const product = plant.products.find(({ id }) => id === order.productId)?.name ?? order.productId;
  return `${order.customer}, ${product}, ${text.units.pieces(format.count(order.pieces))}`;
}

function localSpell(from: string, to: string, { clock, format }: ScenarioWords): string {
  const [start, end] = [instantOfWallText(clock, from), instantOfWallText(clock, to)];
  return start === null || end === null ? `${from} – ${to}` : spellWords(start, end, format);
}

/** "Tue 1 Dec 06:00–14:00", or with both days. */
function spellWords(start: number, end: number, format: Format): string {
  return format.day(start) === format.day(end)
    ? `${format.instant(start)}–${format.clock(end)}`
    : `${format.instant(start)} – ${format.instant(end)}`;
}
