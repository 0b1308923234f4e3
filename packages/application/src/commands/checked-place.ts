import {
  compilePlantCalendars,
  isOpen,
  lineWorkingTime,
  localTextAt,
  nextOpening,
  ordersToMake,
} from "@formweek/capacity-model";
import type { FormingLine, Order, Plant } from "@formweek/capacity-model";
import { type FieldFault, appError } from "../errors.ts";
import { orderNotFound } from "../not-found.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { productOptions } from "../planning/job-options.ts";
import type { ProductOptions } from "../planning/job-options.ts";
import { pinnedPlace } from "../planning/pinned-place.ts";
import { sharesOf } from "../planning/planning-snapshot.ts";
import { planWindow } from "../planning/plan-window.ts";
import { SetupStates } from "../planning/setup-states.ts";
import type { StockShare } from "../ports/hold-repository.ts";
import type { PinnedPlace } from "../ports/pin-repository.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PinCause } from "./pin-cause.ts";
import { refusalOfOrders, refusalOfPlant } from "./record-faults.ts";

/** Where an order is to be held; null where that is left open. */
export interface AskedPlace {
  readonly orderId: string;
  readonly lineId: string | null;
  /** Instant, seconds. */
  readonly startAt: number | null;
}

export interface PlantAndBook {
  readonly plant: Plant;
  /** Those of the book, then those that are held for customers. */
  readonly orders: readonly Order[];
  readonly heldOrderIds: ReadonlySet<string>;
  readonly stockShares: readonly StockShare[];
  /** Instant, seconds; matters only where the plant fixes no planning start. */
  readonly now: number;
}

/**
 * The place if an order of the book can be held there, else everything against it. What only a whole plan can tell (two
 * orders at one time on a line, setters, operators, moulds) is left to the planning run, which then says why.
 */
export function checkedPlace(asked: AskedPlace, inputs: PlantAndBook): Result<PinnedPlace> {
  const { plant, orders, heldOrderIds, now } = inputs;
  const order = orders.find(({ id }) => id === asked.orderId && !heldOrderIds.has(id));
  if (order === undefined) return refused(orderNotFound(asked.orderId));
  const broken = refusalOfPlant(plant) ?? refusalOfOrders([order], plant);
  if (broken !== null) return refused(broken);
  const place = pinnedPlace(asked.lineId, asked.startAt);
  const faults =
    place === null
      ? [nowhere]
      : [...orderFaults(order, inputs), ...placeFaults(place, order, { plant, now })];
  if (place !== null && faults.length === 0) return ok(place);
  return refused(
    appError(
      "invalid-input",
      {
        title: `Order ${order.id} cannot be held there.`,
        cause: faults.map(({ problem }) => problem).join(" "),
        remedy: [...new Set(faults.map(({ remedy }) => remedy))].join(" "),
      },
      faults,
    ),
  );
}

const nowhere: FieldFault = {
  path: "lineId",
  problem: "Neither a line nor a start is named.",
  remedy: "Name a line, a start, or both.",
  cause: { kind: "no place named" },
};

function orderFaults(order: Order, inputs: PlantAndBook): readonly FieldFault[] {
  const { plant, orders } = inputs;
  const made = ordersToMake(orders, plant.products, sharesOf(inputs)).find(
    ({ orderId }) => orderId === order.id,
  );
  if (made === undefined || made.grossPieces > 0) return [];
  return [
    {
      path: "orderId",
      problem: `Order ${order.id} is covered by stock: nothing of it runs.`,
      remedy: "Nothing to hold; correct the stock of its product if pieces have to be made.",
      cause: { kind: "covered by stock" },
    },
  ];
}

function placeFaults(
  place: PinnedPlace,
  order: Order,
  { plant, now }: Pick<PlantAndBook, "plant" | "now">,
): readonly FieldFault[] {
  const product = plant.products.find(({ id }) => id === order.productId);
  if (product === undefined) return [];
  const made = productOptions(plant, product, new SetupStates());
  const able = plant.lines.filter((line) => made.options.some(({ lineId }) => lineId === line.id));
  const line = plant.lines.find(({ id }) => id === place.lineId) ?? null;
  const onLine = place.lineId === null ? [] : lineFaults({ lineId: place.lineId, line, able, made, plant });
  if (place.startAt === null) return onLine;
  const lines = place.lineId === null ? able : line === null ? [] : [line];
  return [...onLine, ...startFaults({ startAt: place.startAt, order, lines, plant, now })];
}

interface AskedLine {
  readonly lineId: string;
  /** Null: the plant has no such line. */
  readonly line: FormingLine | null;
  /** Lines that can make the order. */
  readonly able: readonly FormingLine[];
  readonly made: ProductOptions;
  readonly plant: Plant;
}

function lineFaults({ lineId, line, able, made, plant }: AskedLine): readonly FieldFault[] {
  if (line !== null && able.includes(line)) return [];
  const choice =
    able.length === 0
      ? "No line can make this order as the plant's data stand."
      : `Choose a line that can make it: ${named(able)}.`;
  if (line === null)
    return [
      {
        path: "lineId",
        problem: `"${lineId}" is no line of this plant; its lines are ${named(plant.lines)}.`,
        remedy: choice,
        cause: { kind: "no such line", lineId },
      },
    ];
  // a record that is missing stands against every line and names none
  return made.refusals
    .filter((refusal) => refusal.lineId === line.id || refusal.lineId === "")
    .map(({ code, text, mouldId, compared }): FieldFault => ({
      path: "lineId",
      problem: text,
      remedy: code === "approval" ? `Have the mould approved there and record it, or: ${choice}` : choice,
      ...(compared === undefined ? {} : { cause: { kind: "does not fit", mouldId, check: code, compared } }),
    }));
}

interface AskedStart {
  readonly startAt: number;
  readonly order: Order;
  /** Lines on which the start may lie; one of them must be open then. */
  readonly lines: readonly FormingLine[];
  readonly plant: Plant;
  readonly now: number;
}

function startFaults({ startAt, order, lines, plant, now }: AskedStart): readonly FieldFault[] {
  const window = planWindow(plant, now);
  const local = (at: number): string => localTextAt(plant.timeZone, at);
  const fault = (cause: PinCause, problem: string, remedy: string): FieldFault => ({
    path: "start",
    problem,
    remedy,
    cause,
  });
  if (startAt < window.start || startAt >= window.end)
    return [
      fault(
        { kind: "outside window", from: isoInstant(window.start), to: isoInstant(window.end) },
        `${local(startAt)} lies outside the planning window, ${local(window.start)} to ${local(window.end)}.`,
        "Choose a start within the window.",
      ),
    ];
  if (order.earliestStartAt !== null && startAt < order.earliestStartAt)
    return [
      fault(
        { kind: "before earliest start", earliest: isoInstant(order.earliestStartAt) },
        `${local(startAt)} is before ${local(order.earliestStartAt)}, the earliest start of order ${order.id}.`,
        "Choose a later start, or change the order's earliest start.",
      ),
    ];
  if (lines.length === 0) return [];
  const calendars = compilePlantCalendars(plant, window);
  const times = lines.map((line) => lineWorkingTime(plant, line, calendars));
  if (times.some((time) => isOpen(time, startAt))) return [];
  const next = Math.min(...times.map((time) => nextOpening(time, startAt) ?? window.end));
  const closed = lines.length === 1 ? `${named(lines)} is closed` : `${named(lines)} are all closed`;
  return [
    fault(
      { kind: "closed", next: next < window.end ? isoInstant(next) : null },
      `${closed} at ${local(startAt)}.`,
      next < window.end
        ? `Choose a start in working time; the next is ${local(next)}.`
        : "Choose an earlier start: no working time is left in the window.",
    ),
  ];
}

const named = (lines: readonly FormingLine[]): string => lines.map(({ name }) => name).join(", ");
