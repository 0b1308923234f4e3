import {
  isoInstant,
  type BookedOrder as Booked,
  type NumberedBookStep,
  type OrderTerms as Terms,
} from "@formweek/application";
import {
  type BookStep,
  BookStepsQuery,
  BookStepsResponse,
  type BookedOrder,
  ChangeOrdersRequest,
  OrderBookResponse,
  OrderBookRevision,
  type OrderTerms,
} from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

/** Room for the most changes that one request may hold, both versions of each. */
const MOST_CHANGES_BYTES = 16 * 1024 * 1024;

/** The order book. */
export function orderRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.get(
    "/api/plants/:plantId/orders",
    {
      schema: {
        tags: ["orders"],
        summary: "The order book with each order's state in the newest plan",
        params: PlantPath,
        response: { 200: OrderBookResponse, ...failures },
      },
    },
    async (request) => {
      const { orders, ...book } = valueOf(await app.queries.getOrderBook(request.params, actorOf(request)));
      return { ...book, orders: orders.map(orderOnTheWire) };
    },
  );

  server.post(
    "/api/plants/:plantId/orders/changes",
    {
      bodyLimit: MOST_CHANGES_BYTES,
      schema: {
        tags: ["orders"],
        summary: "Change, add or remove orders, all or none; refused where an order is not what was seen",
        params: PlantPath,
        body: ChangeOrdersRequest,
        response: { 200: OrderBookRevision, ...failures },
      },
    },
    async (request) => {
      const changes = request.body.changes.map(({ before, after }) => ({
        before: before === null ? null : termsOf(before),
        after: after === null ? null : termsOf(after),
      }));
      const input = { ...request.params, changes, step: request.body.step ?? null };
      return valueOf(await app.commands.changeOrders(input, actorOf(request)));
    },
  );

  server.get(
    "/api/plants/:plantId/orders/steps",
    {
      schema: {
        tags: ["orders"],
        summary: "What the asker did to the order book at one desk, for taking it back and doing it again",
        params: PlantPath,
        querystring: BookStepsQuery,
        response: { 200: BookStepsResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, ...request.query };
      return valueOf(await app.queries.listBookSteps(input, actorOf(request))).map(stepOnTheWire);
    },
  );
}

function stepOnTheWire({ number, kind, of, changes, at }: NumberedBookStep): BookStep {
  const onTheWire = (terms: Terms | null): OrderTerms | null =>
    terms === null ? null : termsOnTheWire(terms);
  return {
    number,
    kind,
    of,
    changes: changes.map(({ before, after }) => ({ before: onTheWire(before), after: onTheWire(after) })),
    at: isoInstant(at),
  };
}

/** An order's own fields as the planner takes them. */
export function termsOf({ dueAt, earliestStartAt, ...rest }: OrderTerms): Terms {
  const earliest = earliestStartAt === null ? null : Date.parse(earliestStartAt) / 1000;
  return { ...rest, dueAt: Date.parse(dueAt) / 1000, earliestStartAt: earliest };
}

/** An order's own fields as the wire has them. */
export function termsOnTheWire({ dueAt, earliestStartAt, ...rest }: Terms): OrderTerms {
  const earliest = earliestStartAt === null ? null : isoInstant(earliestStartAt);
  return { ...rest, dueAt: isoInstant(dueAt), earliestStartAt: earliest };
}

function orderOnTheWire(order: Booked): BookedOrder {
  const { dueAt, earliestStartAt, reasons, ...rest } = order;
  return {
    ...rest,
    dueAt: isoInstant(dueAt),
    earliestStartAt: earliestStartAt === null ? null : isoInstant(earliestStartAt),
    reasons: [...reasons],
  };
}
