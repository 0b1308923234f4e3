import { addedCost } from "../plan/breakdown.ts";
import type { Job } from "../problem/problem-data.ts";
import type { Work } from "../work/work.ts";
import type { BatchAnswer, BatchedAnswer, EnquirySequence, OpenDesk, PromiseAnswer } from "./promise.ts";

type Unpromised = Exclude<PromiseAnswer, { readonly status: "promised" }>;

/** The desk after enquiries were answered in some order, and those that it refused. */
interface Answered {
  readonly desk: OpenDesk;
  readonly refused: ReadonlyMap<Job, Unpromised>;
}

/** Each order at its earliest, the next on the plan with it. */
function* answerInTurn(from: OpenDesk, orders: readonly Job[]): Work<Answered> {
  let desk = from;
  const refused = new Map<Job, Unpromised>();
  for (const order of orders) {
    yield;
    const answer = desk.promise(order);
    if (answer.status === "promised") desk = answer.promise.hold();
    else refused.set(order, answer);
  }
  return { desk, refused };
}

function lateWeightHours(finish: number | null, { dueAt, weight }: Job): number {
  return finish === null ? 0 : (weight * Math.max(0, finish - dueAt)) / 3600;
}

function batchOf(
  from: OpenDesk,
  orders: readonly Job[],
  { desk, refused }: Answered,
  sequence: EnquirySequence,
): BatchAnswer {
  const finishOf = (order: Job): number | null =>
    refused.has(order) ? null : desk.limitOf(order.orderId)!.finish;
  const answers = orders.map((order): BatchedAnswer => {
    const { orderId } = order;
    const without = refused.get(order);
    if (without !== undefined) return { ...without, orderId };
    return { status: "promised", orderId, finish: finishOf(order)! };
  });
  return {
    answers,
    desk,
    price: addedCost(desk.objective, from.objective, from.problem.objective),
    lateWeightHours: orders.reduce((sum, order) => sum + lateWeightHours(finishOf(order), order), 0),
    sequence,
  };
}

/** Each a record of its own, so that one given twice is told apart. */
const apart = (enquiries: readonly Job[]): readonly Job[] => enquiries.map((order) => ({ ...order }));

/** Enquiries promised one after another, as given: each at its earliest beside those held before it. */
export function* promiseInTurn(desk: OpenDesk, enquiries: readonly Job[]): Work<BatchAnswer> {
  const orders = apart(enquiries);
  return batchOf(desk, orders, yield* answerInTurn(desk, orders), "as given");
}

/** Seconds of running on the fastest line; 0 for an order that no line may make. */
function leastSeconds({ options, pieces }: Job): number {
  return options.length === 0 ? 0 : pieces * Math.min(...options.map((option) => option.secondsPerPiece));
}

/** [order] seconds between its wanted day and its earliest finish by itself; an order without a place comes last. */
function* slackOf(desk: OpenDesk, orders: readonly Job[]): Work<ReadonlyMap<Job, number>> {
  const slack = new Map<Job, number>();
  for (const order of orders) {
    yield;
    const answer = desk.promise(order);
    slack.set(order, answer.status === "promised" ? order.dueAt - answer.promise.finish : Infinity);
  }
  return slack;
}

/** Orders by a key, lowest first; those that share one as given. */
function sortedBy(orders: readonly Job[], keyOf: (order: Job) => number): readonly Job[] {
  const keyed = orders.map((order, given) => ({ order, key: keyOf(order), given }));
  keyed.sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : a.given - b.given));
  return keyed.map(({ order }) => order);
}

const isSame = (a: readonly Job[], b: readonly Job[]): boolean => a.every((order, i) => order === b[i]);

/** Fewer refused, then less lateness by weight, then cheaper. */
function isBetter(one: BatchAnswer, other: BatchAnswer): boolean {
  const refused = ({ answers }: BatchAnswer): number =>
    answers.filter(({ status }) => status !== "promised").length;
  if (refused(one) !== refused(other)) return refused(one) < refused(other);
  if (one.lateWeightHours !== other.lateWeightHours) return one.lateWeightHours < other.lateWeightHours;
  return one.price.total < other.price.total;
}

/**
 * Enquiries promised together: answered in turn by several sequences, of which that is kept which refuses fewest, then is least late
 * against the wanted days by weight, then costs least; of equals the first tried.
 */
export function* promiseTogether(desk: OpenDesk, enquiries: readonly Job[]): Work<BatchAnswer> {
  const orders = apart(enquiries);
  const slack = yield* slackOf(desk, orders);
  const sequences: readonly (readonly [EnquirySequence, readonly Job[]])[] = [
    ["as given", orders],
    ["wanted day", sortedBy(orders, ({ dueAt }) => dueAt)],
    ["least slack", sortedBy(orders, (order) => slack.get(order)!)],
    ["largest first", sortedBy(orders, (order) => -leastSeconds(order))],
    ["smallest first", sortedBy(orders, leastSeconds)],
  ];
  let best: BatchAnswer | null = null;
  const tried: (readonly Job[])[] = [];
  for (const [name, sequence] of sequences) {
    if (tried.some((each) => isSame(each, sequence))) continue;
    tried.push(sequence);
    const batch = batchOf(desk, orders, yield* answerInTurn(desk, sequence), name);
    if (best === null || isBetter(batch, best)) best = batch;
  }
  return best!;
}
