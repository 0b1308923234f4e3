import { Order, orderFaults } from "@formweek/capacity-model";
import type { OrderTerms } from "../commands/order-changes.ts";
import type { FieldFault } from "../errors.ts";
import { remedyOfOrderField } from "../import/order-remedies.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { valueFault } from "../value-fault.ts";
import { changeFault, shownAt } from "./change-fault.ts";
import type { ScenarioChange } from "./scenario-change.ts";
import type { ScenarioGround } from "./scenario-ground.ts";

/** What stands against taking an order out of the book. */
export function cancelFaults(orderId: string, ground: ScenarioGround): readonly FieldFault[] {
  const { snapshot, frozenRuns } = ground;
  if (orderOf(ground, orderId) === null) return [unknownOrder(orderId)];
  if (snapshot.pins.some((pin) => pin.orderId === orderId))
    return [
      changeFault(
        "orderId",
        { kind: "order pinned", orderId },
        `Order ${orderId} is held on the board.`,
        "Free it there first, or leave the change out.",
      ),
    ];
  const run = frozenRuns.find((each) => each.orderId === orderId);
  if (run === undefined) return [];
  const { lineId, start } = run;
  return [
    changeFault(
      "orderId",
      { kind: "run frozen", orderId, lineId, at: isoInstant(start) },
      `Order ${orderId} runs on line ${lineId} from ${shownAt(snapshot.plant.timeZone, start)} in the plan that was given out, and is frozen.`,
      "Cancel another order, or leave the change out.",
    ),
  ];
}

/** What stands against an order that is not in the book yet. */
export function rushFaults(terms: OrderTerms, ground: ScenarioGround): readonly FieldFault[] {
  const { snapshot } = ground;
  const parsed = Order.safeParse(terms);
  if (!parsed.success) return parsed.error.issues.map((issue) => outOfRange(terms, issue, "order."));
  const order = parsed.data;
  const taken = snapshot.orders.some(({ id }) => id === order.id);
  return [
    ...(taken
      ? [
          changeFault(
            "order.id",
            { kind: "number taken", orderId: order.id },
            `Another order has the number ${order.id}, or it is that of a hold.`,
            "Choose a number that no order of the book has.",
          ),
        ]
      : []),
    ...againstPlant(order, ground, "order."),
  ];
}

/** What stands against other pieces or another due date. */
export function changedOrderFaults(
  { orderId, pieces, dueAt }: Extract<ScenarioChange, { readonly kind: "change order" }>,
  ground: ScenarioGround,
): readonly FieldFault[] {
  const order = orderOf(ground, orderId);
  if (order === null) return [unknownOrder(orderId)];
  if (pieces === null && dueAt === null)
    return [
      changeFault(
        "pieces",
        { kind: "order left as it is", orderId },
        `Order ${orderId} gets neither other pieces nor another due date.`,
        "Name one of the two, or leave the change out.",
      ),
    ];
  const terms: OrderTerms = { ...order, pieces: pieces ?? order.pieces, dueAt: dueAt ?? order.dueAt };
  const parsed = Order.safeParse(terms);
  if (!parsed.success) return parsed.error.issues.map((issue) => outOfRange(terms, issue, ""));
  return againstPlant(parsed.data, ground, "").map((fault) =>
    // what starts after it is due was no fault before
    fault.path === "earliestStartAt" ? { ...fault, path: "dueAt" } : fault,
  );
}

function orderOf({ snapshot }: ScenarioGround, orderId: string): Order | null {
  return snapshot.orders.find(({ id }) => id === orderId && !snapshot.heldOrderIds.has(id)) ?? null;
}

const unknownOrder = (orderId: string): FieldFault =>
  changeFault(
    "orderId",
    { kind: "unknown reference", to: "order", id: orderId },
    `"${orderId}" is no order of the book.`,
    "Choose an order of the book.",
  );

function outOfRange(
  terms: OrderTerms,
  issue: { readonly path: readonly PropertyKey[]; readonly message: string },
  prefix: string,
): FieldFault {
  const field = String(issue.path[0] ?? "");
  const value = String(terms[field as keyof OrderTerms]);
  return changeFault(
    `${prefix}${field}`,
    valueFault({ ...issue }),
    `"${value}": ${issue.message}.`,
    remedyOfOrderField(field),
  );
}

function againstPlant(order: Order, { snapshot }: ScenarioGround, prefix: string): readonly FieldFault[] {
  return orderFaults([order], snapshot.plant).map(({ path, said, cause, remedy }) =>
    changeFault(`${prefix}${path.slice(1).join(".")}`, said, cause, remedy),
  );
}
