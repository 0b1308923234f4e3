import { Order } from "@formweek/capacity-model";
import { type FieldFault, appError } from "../errors.ts";
import { remedyOfOrderField } from "../import/order-remedies.ts";
import { type Result, ok, refused } from "../result.ts";
import { valueFault } from "../value-fault.ts";

/** An order's fields as they are sent: of the right kinds, their ranges not looked at yet. */
export type OrderTerms = Omit<Order, "id" | "productId" | "kind"> & {
  readonly id: string;
  readonly productId: string;
  readonly kind: string;
};

/** What an order was when the planner looked, and what it is to be. `before` null: it is new; `after` null: it is removed. */
export interface OrderChange {
  readonly before: OrderTerms | null;
  readonly after: OrderTerms | null;
}

export interface CheckedChanges {
  readonly put: readonly Order[];
  readonly removeIds: readonly string[];
}

const mostFaults = 50;

/** The changes with every field in its range and every order named once, or all that is wrong with them. */
export function checkedChanges(changes: readonly OrderChange[]): Result<CheckedChanges> {
  const faults: FieldFault[] = [];
  const put: Order[] = [];
  const removeIds: string[] = [];
  const named = new Set<string>();
  for (const [index, { before, after }] of changes.entries()) {
    const id = after?.id ?? before?.id;
    if (id === undefined) faults.push({ path: `change ${index + 1}`, ...emptyChange });
    else if (named.has(id))
      faults.push({ path: `order ${id}`, record: { kind: "order", name: id }, ...namedTwice });
    else if (before !== null && before.id !== id)
      faults.push({
        path: `order ${before.id}, id`,
        record: { kind: "order", name: before.id },
        ...otherNumber,
      });
    else if (after === null) removeIds.push(id);
    else {
      const parsed = Order.safeParse(after);
      if (parsed.success) put.push(parsed.data);
      else faults.push(...parsed.error.issues.map((issue) => faultOf(after, issue)));
    }
    if (id !== undefined) named.add(id);
  }
  return faults.length === 0 ? ok({ put, removeIds }) : refused(refusalOf(faults));
}

function faultOf(
  order: OrderTerms,
  issue: { readonly path: readonly PropertyKey[]; readonly message: string },
): FieldFault {
  const field = String(issue.path[0] ?? "");
  const value = String(order[field as keyof OrderTerms]);
  return {
    path: `order ${order.id}, ${field}`,
    problem: `"${value}": ${issue.message}`,
    remedy: remedyOfOrderField(field),
    cause: valueFault({ ...issue }),
    record: { kind: "order", name: order.id },
  };
}

function refusalOf(faults: readonly FieldFault[]) {
  const [first] = faults;
  const more = faults.length === 1 ? "" : ` And ${faults.length - 1} more.`;
  return appError(
    "invalid-input",
    {
      title: "Orders cannot be changed so.",
      cause: `${first?.path ?? ""}: ${first?.problem ?? ""}.${more}`,
      remedy: first?.remedy ?? "",
    },
    faults.slice(0, mostFaults),
  );
}

const emptyChange = {
  cause: { kind: "no order named" },
  problem: "names no order",
  remedy: "Say what the order was, what it is to be, or both.",
} as const;
const namedTwice = {
  cause: { kind: "order changed twice" },
  problem: "is changed twice",
  remedy: "Give each order one change.",
} as const;
const otherNumber = {
  cause: { kind: "order gets another number" },
  problem: "gets another number",
  remedy: "Remove the order and add a new one with that number.",
} as const;
