import { workedUntil } from "../calendar/working-time.ts";
import type { WorkingTime } from "../calendar/working-time.ts";
import type { Bucket } from "./buckets.ts";
import { StepCursor, stepsOf } from "./steps.ts";
import type { Steps } from "./steps.ts";

/** What load is added up on: a line, a mould with its copies, a setter team, a pool of operators. */
export const RESOURCE_KINDS = ["line", "mould", "team", "pool"] as const;
export type ResourceKind = (typeof RESOURCE_KINDS)[number];

/** One line, copy, team or head, in the hundredths in which amounts are kept, so that half operators add up exactly. */
export const WHOLE_UNIT = 100;

/** What a resource has, in hundredths of a unit. */
export interface ResourceHours {
  readonly kind: ResourceKind;
  readonly id: string;
  /** Units that there are: 1 for a line or team, a mould's copies, the most heads that a pool ever has at once. */
  readonly units: number;
  /** Units that the calendars open, never more than `units`. */
  readonly open: Steps;
  /** Units that stand: closures of a line, copies out of service. */
  readonly standing: Steps;
}

/** What the plan does with a resource over [start, end). */
export interface PlannedWork {
  readonly kind: "run" | "change" | "stop";
  readonly start: number;
  readonly end: number;
  /** Hundredths of a unit. */
  readonly amount: number;
  /** Order that it is for; null where it is for none. */
  readonly orderId: string | null;
}

/** Work without a time of its own, spread evenly over the working time of [from, to). */
export interface RoughWork {
  readonly kind: "run" | "change";
  /** Seconds × hundredths of a unit, whole. */
  readonly amount: number;
  readonly over: WorkingTime;
  readonly from: number;
  readonly to: number;
  readonly orderId: string;
}

/** A resource with all that is to be done on it. */
export interface LoadedResource {
  readonly hours: ResourceHours;
  readonly planned: readonly PlannedWork[];
  readonly rough: readonly RoughWork[];
}

/** What the load of a bucket rests on. */
export type LoadBasis = "planned" | "rough-cut" | "both" | "none";

/**
 * Load of one resource in one bucket, in seconds × hundredths of a unit, all whole. run + change + stop + idle + closed = total,
 * and in the terms of ISA-95 (IEC 62264, from memory) committed (run + change) + available (idle) + unattainable (stop + closed) = total.
 */
export interface ResourceLoad {
  readonly run: number;
  readonly change: number;
  /** Open by the calendar, but the unit stands. */
  readonly stop: number;
  readonly idle: number;
  readonly closed: number;
  readonly committed: number;
  readonly available: number;
  readonly unattainable: number;
  readonly total: number;
  /** Rough-cut work for which the bucket has no time left; part of no other figure. */
  readonly overload: number;
  /** Planned work outside the resource's hours, such as a change on a closed line; part of no other figure. */
  readonly outside: number;
  /** (committed + overload) / (committed + available); null where the resource can not work at all. */
  readonly share: number | null;
  readonly basis: LoadBasis;
}

/**
 * Load of a resource in each bucket; buckets are sorted and do not overlap. At every instant the plan's runs come before its
 * changes and those before its stops, so no second counts twice; rough-cut work then takes the bucket's idle time, runs first.
 */
export function resourceLoads(resource: LoadedResource, buckets: readonly Bucket[]): readonly ResourceLoad[] {
  const sweep = sweepOf(resource);
  const rough = roughIn(resource.rough, buckets);
  return buckets.map((bucket, index) => {
    const planned = sweep(bucket);
    return withRough(planned, rough.run[index] as number, rough.change[index] as number);
  });
}

interface PlannedParts {
  readonly run: number;
  readonly change: number;
  readonly stop: number;
  readonly idle: number;
  readonly closed: number;
  readonly outside: number;
}

/** Adds up the plan bucket by bucket, forward in time. */
function sweepOf({ hours, planned }: LoadedResource): (bucket: Bucket) => PlannedParts {
  const of = (kind: PlannedWork["kind"]): StepCursor =>
    new StepCursor(stepsOf(planned.filter((work) => work.kind === kind)));
  const open = new StepCursor(hours.open);
  const standing = new StepCursor(hours.standing);
  const [runs, changes, stops] = [of("run"), of("change"), of("stop")];
  return (bucket) => {
    const sums = { run: 0, change: 0, stop: 0, idle: 0, closed: 0, outside: 0 };
    for (let at = bucket.start; at < bucket.end;) {
      const inCalendar = Math.min(open.valueAt(at), hours.units);
      const attainable = Math.max(0, Math.min(inCalendar, hours.units - standing.valueAt(at)));
      const [wantsRun, wantsChange] = [runs.valueAt(at), changes.valueAt(at)];
      const run = Math.min(wantsRun, attainable);
      const change = Math.min(wantsChange, attainable - run);
      const stop = Math.min(stops.valueAt(at), attainable - run - change);
      const next = Math.min(
        bucket.end,
        ...[open, standing, runs, changes, stops].map((cursor) => cursor.changesAt),
      );
      const seconds = next - at;
      sums.run += run * seconds;
      sums.change += change * seconds;
      sums.stop += (stop + inCalendar - attainable) * seconds;
      sums.idle += (attainable - run - change - stop) * seconds;
      sums.closed += (hours.units - inCalendar) * seconds;
      sums.outside += (wantsRun - run + wantsChange - change) * seconds;
      at = next;
    }
    return sums;
  };
}

/** Rough-cut work in each bucket. */
function roughIn(
  works: readonly RoughWork[],
  buckets: readonly Bucket[],
): { readonly run: readonly number[]; readonly change: readonly number[] } {
  const sums = { run: buckets.map(() => 0), change: buckets.map(() => 0) };
  for (const work of works) {
    const before = amountBefore(work);
    for (let index = firstEndingAfter(buckets, work.from); index < buckets.length; index += 1) {
      const { start, end } = buckets[index] as Bucket;
      if (start >= work.to) break;
      (sums[work.kind][index] as number) += before(end) - before(start);
    }
  }
  return sums;
}

/** How much of a rough-cut work lies before an instant; whole, so that buckets of any size add up to the same. */
function amountBefore({ amount, over, from, to }: RoughWork): (instant: number) => number {
  const start = workedUntil(over, from);
  const total = workedUntil(over, to) - start;
  if (total <= 0) return (instant) => (instant > from ? amount : 0);
  return (instant) => {
    const worked = workedUntil(over, Math.min(Math.max(instant, from), to)) - start;
    return Math.floor((amount * worked) / total);
  };
}

/** The part of a rough-cut work that lies in a bucket. */
export function roughPart(work: RoughWork, { start, end }: Pick<Bucket, "start" | "end">): number {
  const before = amountBefore(work);
  return before(end) - before(start);
}

function firstEndingAfter(buckets: readonly Bucket[], instant: number): number {
  let low = 0;
  let high = buckets.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((buckets[middle] as Bucket).end <= instant) low = middle + 1;
    else high = middle;
  }
  return low;
}

function withRough(planned: PlannedParts, roughRun: number, roughChange: number): ResourceLoad {
  const takenRun = Math.min(roughRun, planned.idle);
  const takenChange = Math.min(roughChange, planned.idle - takenRun);
  const run = planned.run + takenRun;
  const change = planned.change + takenChange;
  const idle = planned.idle - takenRun - takenChange;
  const committed = run + change;
  const unattainable = planned.stop + planned.closed;
  const overload = roughRun - takenRun + roughChange - takenChange;
  const attainable = committed + idle;
  return {
    run,
    change,
    stop: planned.stop,
    idle,
    closed: planned.closed,
    committed,
    available: idle,
    unattainable,
    total: attainable + unattainable,
    overload,
    outside: planned.outside,
    share: attainable === 0 ? null : (committed + overload) / attainable,
    basis: basisOf(planned.run + planned.change + planned.outside > 0, roughRun + roughChange > 0),
  };
}

function basisOf(isPlanned: boolean, isRough: boolean): LoadBasis {
  if (isPlanned) return isRough ? "both" : "planned";
  return isRough ? "rough-cut" : "none";
}

/** What one order asks of a resource in one bucket, in seconds × hundredths of a unit. */
export interface OrderLoad {
  readonly orderId: string;
  readonly run: number;
  readonly change: number;
  readonly basis: Exclude<LoadBasis, "none">;
}

/** The orders behind a resource's load in one bucket, the greatest first. Planned work counts in full, also outside hours. */
export function orderLoads(
  { planned, rough }: LoadedResource,
  bucket: Pick<Bucket, "start" | "end">,
): readonly OrderLoad[] {
  const sums = new Map<string, { run: number; change: number; isPlanned: boolean; isRough: boolean }>();
  const of = (orderId: string) => {
    const sum = sums.get(orderId) ?? { run: 0, change: 0, isPlanned: false, isRough: false };
    sums.set(orderId, sum);
    return sum;
  };
  for (const { kind, start, end, amount, orderId } of planned) {
    const seconds = Math.min(end, bucket.end) - Math.max(start, bucket.start);
    if (kind === "stop" || orderId === null || seconds <= 0) continue;
    const sum = of(orderId);
    sum[kind] += seconds * amount;
    sum.isPlanned = true;
  }
  for (const work of rough) {
    if (work.from >= bucket.end || work.to <= bucket.start) continue;
    const part = roughPart(work, bucket);
    if (part === 0) continue;
    const sum = of(work.orderId);
    sum[work.kind] += part;
    sum.isRough = true;
  }
  return [...sums]
    .map(([orderId, { run, change, isPlanned, isRough }]) => ({
      orderId,
      run,
      change,
      basis: isPlanned ? (isRough ? ("both" as const) : ("planned" as const)) : ("rough-cut" as const),
    }))
    .sort((a, b) => b.run + b.change - a.run - a.change || (a.orderId < b.orderId ? -1 : 1));
}
