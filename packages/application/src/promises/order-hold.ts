import { Order } from "@formweek/capacity-model";
import type { Actor } from "../actor.ts";
import { writeOrders } from "../commands/put-orders.ts";
import { type AppError, appError } from "../errors.ts";
import { remedyOfOrderField } from "../import/order-remedies.ts";
import type { StoredHold } from "../ports/hold-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import type { KeptDesk } from "./kept-desk.ts";
import type { HeldCapacity } from "./held-capacity.ts";
import { documentUnder, renamed, withOrdered } from "./hold-plan.ts";
import type { PromiseQueue } from "./promise-queue.ts";
import { holdEnded } from "./promise-refusals.ts";
import { holdAsItIs, ownHold } from "./release-hold.ts";
import { type Attempt, RACED, addHoldStep, areStill, untilFirst } from "./write-holds.ts";

export interface OrderHoldInput extends PlantInput {
  readonly holdId: string;
  readonly orderNumber: string;
  /** Null: the customer for whom it is held. */
  readonly customer: string | null;
  /** Revision of the order book that this was decided on. */
  readonly expectedRevision: number;
}

export interface HoldOrdered {
  /** Of the order book. */
  readonly revision: number;
  readonly hold: HeldCapacity;
}

/**
 * Makes a hold an order of the book, due when it was promised and with the stock that was kept for it; its run stays where it is
 * and goes by the order's number. Ordering it again under the same number changes nothing.
 */
export const orderHold = (desks: DeskKeeper, queue: PromiseQueue): UseCase<OrderHoldInput, HoldOrdered> => ({
  role: "sales",
  run: (ports, input, actor) =>
    queue.run(input.plantId, async () => {
      const written = await untilFirst(ports, () => tryToOrder({ ports, desks, actor }, input));
      if (!written.ok) return written;
      const now = await holdAsItIs(ports, input.plantId, input.holdId);
      return now.ok ? ok({ revision: written.value, hold: now.value.hold }) : now;
    }),
});

interface Ordering {
  readonly ports: Ports;
  readonly desks: DeskKeeper;
  readonly actor: Actor;
}

/** Revision of the book after it. */
async function tryToOrder(
  { ports, desks, actor }: Ordering,
  input: OrderHoldInput,
): Promise<Attempt<number>> {
  const { plantId, orderNumber } = input;
  const opened = await desks.open(ports, plantId);
  if (!opened.ok) return opened;
  const kept = opened.value;
  const found = await ownHold(ports, input, actor);
  if (!found.ok) return found;
  const hold = found.value;
  if (hold.ending !== null) {
    const isSame = hold.ending.state === "ordered" && hold.ending.orderNumber === orderNumber;
    return isSame ? ok(kept.revisions.book) : refused(holdEnded(hold.order.id, hold.ending.state));
  }
  const order = orderFor(hold, input, kept);
  if (!order.ok) return order;
  const { standing } = kept;
  const heldId = hold.order.id;
  const records = withOrdered(standing.records, heldId, order.value);
  const changed = { records, document: renamed(standing.document, heldId, orderNumber) };
  const document = documentUnder(standing, changed, ports.clock.now());
  if (!document.ok) return document;
  return ports.store.write<number, AppError | typeof RACED>(async (repositories) => {
    if (!(await areStill(repositories, plantId, kept.revisions))) return refused(RACED);
    const change = { put: [order.value], removeIds: [] };
    const expectedRevision = kept.revisions.book;
    const booked = await writeOrders(ports, repositories, { plantId, change, expectedRevision });
    if (!booked.ok) return booked;
    const at = ports.clock.now();
    const ending = { state: "ordered", by: actor.id, at, orderNumber } as const;
    const spent = { holdIds: [hold.id], ending };
    const revision = await repositories.holds.end(plantId, spent, kept.revisions.holds);
    if (revision === null) return refused(RACED);
    await addHoldStep(ports, repositories, {
      plantId,
      parentId: standing.planId,
      change: { kind: "order hold", orderId: heldId, orderNumber },
      document: document.value,
      by: actor.id,
    });
    const told = { type: "holds-changed", revision, holdId: hold.id, state: "ordered" } as const;
    await repositories.events.append(plantId, at, told);
    return ok(booked.value.revision);
  });
}

/** The order of the book that the hold becomes. */
function orderFor(
  { order }: StoredHold,
  { orderNumber, customer, expectedRevision }: OrderHoldInput,
  { revisions, standing }: KeptDesk,
): Result<Order> {
  if (revisions.book !== expectedRevision) return refused(bookChanged);
  if (standing.orders.some(({ id }) => id === orderNumber)) return refused(numberTaken(orderNumber));
  const parsed = Order.safeParse({ ...order, id: orderNumber, customer: customer ?? order.customer });
  if (parsed.success) return ok(parsed.data);
  const faults = parsed.error.issues.map(({ path, message }) => {
    const field = path[0] === "id" ? "orderNumber" : String(path[0] ?? "");
    return { path: field, problem: message, remedy: remedyOfOrderField(String(path[0] ?? "")) };
  });
  const text = { cause: faults[0]?.problem ?? "", remedy: faults[0]?.remedy ?? "" };
  return refused(appError("invalid-input", { title: "It cannot be ordered so.", ...text }, faults));
}

const bookChanged = appError("order-book-changed", {
  title: "The order book changed in the meantime.",
  cause: "Someone else changed orders after you looked.",
  remedy: "Look at the book again, then order it. The hold stands as it is.",
});

const numberTaken = (orderNumber: string) =>
  appError(
    "invalid-input",
    {
      title: "It cannot be ordered so.",
      cause: `Order ${orderNumber} is in the book already, or is a hold.`,
      remedy: "Choose another order number. The hold stands as it is.",
    },
    [
      {
        path: "orderNumber",
        problem: `"${orderNumber}" is taken.`,
        remedy: "Choose a number that no order of the book has.",
      },
    ],
  );
