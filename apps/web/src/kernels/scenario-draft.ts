import type { Plant } from "@formweek/capacity-model";
import type { OrderTerms, ScenarioChange } from "@formweek/contracts";
import { secondsOf } from "./board-plan.ts";
import { emptyOrder, readNewOrder, type NewOrderDraft } from "./new-order.ts";
import { decimalIn, draftOf, wholeIn } from "./order-draft.ts";
import { productMeant } from "./product-finder.ts";
import { draftOfShift, firstDraft, shiftOfDraft, type ShiftDraft, type ShiftGround } from "./shift-draft.ts";
import { instantOfWallText, wallText, wireText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** A change as it stands in a form: texts, times by the plant's clock. */
export type ChangeDraft =
  | {
      readonly kind: "close line";
      readonly lineId: string;
      readonly from: string;
      readonly to: string;
      readonly reason: string;
    }
  | { readonly kind: "add shift"; readonly shift: ShiftDraft }
  | { readonly kind: "more copies"; readonly mouldId: string; readonly more: string }
  | {
      readonly kind: "another team";
      readonly likeTeamId: string;
      readonly name: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: "cancel order"; readonly orderId: string }
  | { readonly kind: "rush order"; readonly order: NewOrderDraft }
  | {
      readonly kind: "change order";
      readonly orderId: string;
      /** Empty: as it is. */
      readonly pieces: string;
      /** Empty: as it is. */
      readonly dueAt: string;
    }
  | {
      readonly kind: "cycle rate";
      readonly lineId: string;
      readonly mouldId: string;
      readonly cyclesPerMin: string;
    };

export type ChangeKind = ScenarioChange["kind"];

/** In the order in which they are offered. */
export const changeKinds = [
  "add shift",
  "close line",
  "more copies",
  "another team",
  "cycle rate",
  "change order",
  "rush order",
  "cancel order",
] as const satisfies readonly ChangeKind[];

/** What a draft is read against, with the names that a person need not give. */
export interface ChangeGround extends ShiftGround {
  readonly unnamed: { readonly shift: string; readonly team: string };
}

export type ChangeReading =
  | { readonly kind: "read"; readonly change: ScenarioChange }
  | { readonly kind: "faulty"; readonly fields: readonly string[] };

const shiftSeconds = 8 * 3600;

/** A form of that kind as it is opened first. */
export function freshChange(kind: ChangeKind, ground: ChangeGround): ChangeDraft {
  const { plan, plant, clock, unnamed } = ground;
  const lineId = plant.lines[0]?.id ?? "";
  const spell = {
    from: wallText(clock, plan.startAt),
    to: wallText(clock, plan.startAt + shiftSeconds),
  };
  switch (kind) {
    case "close line":
      return { kind, lineId, ...spell, reason: "" };
    case "add shift":
      return { kind, shift: firstDraft(ground, lineId, null) };
    case "more copies":
      return { kind, mouldId: "", more: "1" };
    case "another team":
      return { kind, likeTeamId: plant.setterTeams[0]?.id ?? "", name: unnamed.team, ...spell };
    case "cancel order":
      return { kind, orderId: "" };
    case "rush order":
      return { kind, order: emptyOrder(clock) };
    case "change order":
      return { kind, orderId: "", pieces: "", dueAt: "" };
    case "cycle rate":
      return { kind, lineId, mouldId: "", cyclesPerMin: "" };
  }
}

/** A change as it is opened to be changed. */
export function draftOfChange(change: ScenarioChange, { plant, clock }: ShiftGround): ChangeDraft {
  const wall = (instant: string): string => wallText(clock, secondsOf(instant));
  switch (change.kind) {
    case "close line":
      return { kind: change.kind, ...change.closure };
    case "add shift":
      return { kind: change.kind, shift: draftOfShift(change.shift, plant) };
    case "more copies":
      return { ...change, more: `${change.more}` };
    case "another team":
      return { ...change, from: wall(change.from), to: wall(change.to) };
    case "cancel order":
      return change;
    case "rush order":
      return { kind: change.kind, order: newOrderDraft(change.order, clock) };
    case "change order":
      return {
        ...change,
        pieces: change.pieces === null ? "" : `${change.pieces}`,
        dueAt: change.dueAt === null ? "" : wall(change.dueAt),
      };
    case "cycle rate":
      return { ...change, cyclesPerMin: `${change.cyclesPerMin}` };
  }
}

/** What a draft says, or the fields that say nothing that can be asked; whether the plant allows it is the server's to say. */
export function readChange(draft: ChangeDraft, ground: ChangeGround): ChangeReading {
  const { plant, clock } = ground;
  const faulty: string[] = [];
  const taken = <Value>(field: string, value: Value | null | undefined, instead: Value): Value => {
    if (value === null || value === undefined) faulty.push(field);
    return value ?? instead;
  };
  const text = (field: string, value: string): string =>
    taken(field, value.trim() === "" ? null : value.trim(), "");
  const wall = (field: string, value: string): string => {
    const instant = instantOfWallText(clock, value);
    return taken(field, instant === null ? null : wireText(instant), "");
  };
  /** Day and time that stay texts of the plant's clock. */
  const local = (field: string, value: string): string =>
    taken(field, instantOfWallText(clock, value) === null ? null : value.slice(0, 16), "");
  const mould = (value: string): string => taken("mouldId", productMeant(plant.moulds, value)?.id, value);
  const read = (change: ScenarioChange): ChangeReading =>
    faulty.length > 0 ? { kind: "faulty", fields: faulty } : { kind: "read", change };
  const { kind } = draft;
  switch (kind) {
    case "close line": {
      const [from, to] = [local("from", draft.from), local("to", draft.to)];
      return read({
        kind,
        closure: { lineId: draft.lineId, from, to, reason: text("reason", draft.reason) },
      });
    }
    case "add shift": {
      const shift = shiftOfDraft(ground, draft.shift, ground.unnamed.shift);
      return shift === null ? { kind: "faulty", fields: ["date"] } : read({ kind, shift });
    }
    case "more copies": {
      const more = wholeIn(draft.more);
      return read({
        kind,
        mouldId: mould(draft.mouldId),
        more: taken("more", more !== undefined && more <= mostCopiesMore ? more : null, 1),
      });
    }
    case "another team":
      return read({
        kind,
        likeTeamId: text("likeTeamId", draft.likeTeamId),
        name: text("name", draft.name),
        from: wall("from", draft.from),
        to: wall("to", draft.to),
      });
    case "cancel order":
      return read({ kind, orderId: text("orderId", draft.orderId) });
    case "rush order": {
      const products = plant.products.map(({ id, name }) => [id, name] as const);
      const reading = readNewOrder(draft.order, { clock, products, isTaken: () => false });
      return reading.kind === "read"
        ? { kind: "read", change: { kind, order: reading.terms } }
        : { kind: "faulty", fields: reading.faults.map(({ field }) => field) };
    }
    case "change order": {
      const isSame = draft.pieces.trim() === "" && draft.dueAt === "";
      if (isSame) faulty.push("pieces");
      return read({
        kind,
        orderId: text("orderId", draft.orderId),
        pieces: draft.pieces.trim() === "" ? null : taken("pieces", wholeIn(draft.pieces), 0),
        dueAt: draft.dueAt === "" ? null : wall("dueAt", draft.dueAt),
      });
    }
    case "cycle rate":
      return read({
        kind,
        lineId: draft.lineId,
        mouldId: mould(draft.mouldId),
        cyclesPerMin: taken("cyclesPerMin", decimalIn(draft.cyclesPerMin), 0),
      });
  }
}

/** As many as the server takes in one change. */
const mostCopiesMore = 5;

function newOrderDraft(terms: OrderTerms, clock: ZoneClock): NewOrderDraft {
  const draft = draftOf(terms, clock);
  const [day = "", time = ""] = draft.dueAt.split("T");
  return { ...draft, id: terms.id, dueAt: day, dueTime: time };
}

/** Name of a scenario that stands for one change alone, as long as names may be. */
export function nameOfWords(words: string): string {
  const most = 80;
  return words.length <= most ? words : `${words.slice(0, most - 1).trimEnd()}…`;
}

/** Lines whose weekly shifts are offered for a shift: of the first line that works it. */
export function patternLineOf(plant: Plant, { lineIds }: Pick<ShiftDraft, "lineIds">): string {
  return lineIds[0] ?? plant.lines[0]?.id ?? "";
}
