import { Order } from "@formweek/capacity-model";
import type { Plant, Product } from "@formweek/capacity-model";
import { seededRandom } from "../random.ts";
import type { Random } from "../random.ts";
import { RoughSchedule } from "./rough-schedule.ts";
import type { Placement } from "./rough-schedule.ts";

/** What a week of invented orders should look like. */
export interface OrderWeek {
  readonly seed: number;
  /** Stop once this many orders stand; null: by load alone. */
  readonly count: number | null;
  /** Stop once the lines are filled to this share of the working time in `days` days on average. */
  readonly loadShare: number;
  readonly days: number;
  /** Hours of run that one order fills, least and most. */
  readonly runHours: readonly [least: number, most: number];
  /** Hours between the rough finish and the due time, least and most; negative makes hopeless orders. */
  readonly slackHours: readonly [least: number, most: number];
  readonly firstNumber: number;
}

const customers = [
  "Merrowfield Dairy",
  "Tern & Daughters",
  "Hollinmoor Foods",
  "Quernside Catering",
  "Brackenfell Ices",
  "Osierholt Salads",
  "Pellowick Yoghurt",
  "Lowmarrow Farm",
];

/** Six in the morning, two in the afternoon, ten at night: goods leave when a shift ends. */
const DISPATCH_STEP_SECONDS = 8 * 3600;

/**
 * Orders for one plant, drawn so that a rough schedule of them exists: each is laid on the fitting line and mould copy
 * that are free first, and due some slack after that. Same plant and week, same orders. Products without a line are never
 * drawn; an empty list means that nothing fits anywhere.
 */
export function ordersOfWeek(plant: Plant, week: OrderWeek): readonly Order[] {
  const random = seededRandom(week.seed);
  const schedule = new RoughSchedule(plant, week.days);
  const makeable = plant.products.filter((product) => schedule.canMake(product));
  const orders: Order[] = [];
  if (makeable.length === 0) return orders;
  const wanted = week.count ?? Number.POSITIVE_INFINITY;
  while (orders.length < wanted && (week.count !== null || schedule.loadShare() < week.loadShare)) {
    const product = random.pick(makeable);
    const hours = week.runHours[0] + random.next() * (week.runHours[1] - week.runHours[0]);
    const placement = schedule.place(product, hours);
    if (placement === null) break;
    orders.push(orderOf({ placement, product, number: week.firstNumber + orders.length, random, week }));
  }
  return orders;
}

interface Draw {
  readonly placement: Placement;
  readonly product: Product;
  readonly number: number;
  readonly random: Random;
  readonly week: OrderWeek;
}

function orderOf({ placement, product, number, random, week }: Draw): Order {
  const slackHours = week.slackHours[0] + random.next() * (week.slackHours[1] - week.slackHours[0]);
  const readyAt = placement.end + product.conditioningHours * 3600 + slackHours * 3600;
  const key = random.whole(1, 10);
  return Order.parse({
    id: String(number),
    customer: random.pick(customers),
    productId: product.id,
    pieces: placement.pieces,
    dueAt:
      Math.ceil((readyAt - placement.origin) / DISPATCH_STEP_SECONDS) * DISPATCH_STEP_SECONDS +
      placement.origin,
    earliestStartAt: random.next() < 0.08 ? placement.earliest : null,
    weight: key >= 9 ? 3 : key >= 6 ? 2 : 1,
    kind: random.next() < 0.12 ? "forecast" : "firm",
    underTolerance: 0,
    overTolerance: 0.05,
    partsAllowed: random.next() < 0.5,
  });
}
