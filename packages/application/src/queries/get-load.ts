import {
  resourceLoads,
  instantOfLocalText,
  localTextAt,
  type Bucket,
  type ResourceHours,
  type ResourceKind,
  type ResourceLoad,
  type TimeWindow,
} from "@formweek/capacity-model";
import { currentLoad } from "../load/current-load.ts";
import { loadBuckets, type BucketSize, type PlantLoad } from "../load/plant-load.ts";
import { ok } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

const DAY_SECONDS = 86_400;
/** Days that one answer holds at the most, so that it stays a screenful. */
const DAYS_OF_VIEW: Readonly<Record<BucketSize, number>> = { shift: 14, day: 42, week: 200 };

/** Which load. `from`: local date from which on; null: from the planning start. */
export interface LoadViewInput extends PlantInput {
  readonly kind: ResourceKind;
  readonly bucket: BucketSize;
  readonly from: string | null;
}

/** A resource and its load in each bucket. */
export interface LoadRow {
  readonly hours: ResourceHours;
  readonly loads: readonly ResourceLoad[];
}

export interface LoadView {
  readonly planId: string | null;
  /** End of the plan's last segment; null without a plan. ISO 8601 UTC. */
  readonly plannedUntil: string | null;
  /** All that load is looked at in. */
  readonly window: TimeWindow;
  readonly buckets: readonly Bucket[];
  /** Local dates from which the views before and after this one begin; null: there is none. */
  readonly previousFrom: string | null;
  readonly nextFrom: string | null;
  readonly rows: readonly LoadRow[];
  /** Orders, or rests of orders, without a place in the plan that are laid roughly over the weeks. */
  readonly roughOrders: number;
  /** Orders that load nothing, and why. */
  readonly unplaced: PlantLoad["roughCut"]["unplaced"];
}

/** Load against capacity of all resources of a kind. */
export const getLoad: UseCase<LoadViewInput, LoadView> = {
  role: "viewer",
  run: async (ports, input) => {
    const current = await currentLoad(ports, input.plantId);
    if (!current.ok) return current;
    const { load, planId } = current.value;
    return ok({ planId, ...loadView(load, input) });
  },
};

/** The view of a load that is worked out. */
export function loadView(
  load: PlantLoad,
  { kind, bucket, from }: Omit<LoadViewInput, "plantId">,
): Omit<LoadView, "planId"> {
  const { window, plant, document, roughCut } = load;
  const length = DAYS_OF_VIEW[bucket] * DAY_SECONDS;
  const wanted = from === null ? null : instantOfLocalText(plant.timeZone, `${from}T00:00`);
  const start = Math.min(Math.max(wanted ?? window.start, window.start), window.end - DAY_SECONDS);
  const all = spanned(load, kind, bucket, { start, end: start + length });
  const end = all.at(-1)?.end ?? window.end;
  const allRows = load
    .resources(kind)
    .map((resource) => ({ hours: resource.hours, loads: resourceLoads(resource, all) }));
  const { rows, buckets } =
    bucket === "shift" ? withoutShutGaps(allRows, all) : { rows: allRows, buckets: all };
  const dateAt = (instant: number): string => localTextAt(plant.timeZone, instant).slice(0, 10);
  return {
    plannedUntil: document === null ? null : lastEnd(document.segments),
    window,
    buckets,
    previousFrom: start <= window.start ? null : dateAt(Math.max(window.start, start - length)),
    nextFrom: end >= window.end ? null : dateAt(end),
    rows,
    roughOrders: roughCut.placements.length,
    unplaced: roughCut.unplaced,
  };
}

/** Whole buckets from the start of a span, as many as a view holds. */
function spanned(load: PlantLoad, kind: ResourceKind, size: BucketSize, span: TimeWindow): readonly Bucket[] {
  if (size === "week") return loadBuckets(load, kind, size, span);
  // whole local days, also over a change of the clocks
  const days = loadBuckets(load, kind, "day", span).slice(0, DAYS_OF_VIEW[size]);
  const [first, last] = [days[0], days.at(-1)];
  if (size === "day" || first === undefined || last === undefined) return days;
  return loadBuckets(load, kind, "shift", { start: first.start, end: last.end });
}

/** Rows over the buckets. Gaps between shifts in which nothing can work and nothing is planned are left out. */
function withoutShutGaps(
  rows: readonly LoadRow[],
  buckets: readonly Bucket[],
): { readonly rows: readonly LoadRow[]; readonly buckets: readonly Bucket[] } {
  const isOfUse = buckets.map((_, index) =>
    rows.some(({ loads }) => {
      const load = loads[index];
      return load !== undefined && (load.closed < load.total || load.outside > 0 || load.overload > 0);
    }),
  );
  const isShift = ({ label }: Bucket): boolean => label.includes(" ");
  const kept = buckets.map((bucket, index) => isShift(bucket) || isOfUse[index] === true);
  const keep = <Each>(list: readonly Each[]): readonly Each[] => list.filter((_, index) => kept[index]);
  return { buckets: keep(buckets), rows: rows.map(({ hours, loads }) => ({ hours, loads: keep(loads) })) };
}

const lastEnd = (segments: readonly { readonly end: string }[]): string | null =>
  segments.reduce<string | null>((last, { end }) => (last === null || end > last ? end : last), null);
