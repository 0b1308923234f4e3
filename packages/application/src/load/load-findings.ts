import {
  RESOURCE_KINDS,
  instantOfLocalText,
  orderLoads,
  resourceLoads,
  roughPart,
  sheetRunOut,
  type Bucket,
  type LoadedResource,
  type ResourceKind,
  type ResourceLoad,
  type SheetMove,
  type SheetRunOut,
} from "@formweek/capacity-model";
import { instantOfIso } from "../planning/iso-instant.ts";
import type { PlantLoad } from "./plant-load.ts";
import { reliefIn, type Relief } from "./relief.ts";

/** A week of a resource that is loaded beyond its limit. */
export interface LoadedWeek {
  readonly bucket: Bucket;
  readonly load: ResourceLoad;
}

/** A resource that is loaded beyond its limit, or the most loaded of all. */
export interface ResourceFinding {
  readonly kind: ResourceKind;
  readonly id: string;
  readonly units: number;
  /** In order of time; never empty. */
  readonly weeks: readonly LoadedWeek[];
  /** The week that is loaded most; what helps is worked out for it. */
  readonly worst: LoadedWeek;
  /** Work beyond the hours there, over these weeks, seconds × hundredths of a unit. */
  readonly beyond: number;
  readonly reliefs: readonly Relief[];
}

export interface Bottleneck extends ResourceFinding {
  /** Orders behind these weeks, the greatest first. */
  readonly orders: readonly { readonly orderId: string; readonly amount: number }[];
  readonly orderCount: number;
}

export interface SheetFinding extends SheetRunOut {
  readonly sheetId: string;
}

export interface LoadFindings {
  /** Null where nothing is to be done. */
  readonly bottleneck: Bottleneck | null;
  /** Moulds above nine tenths, everything else beyond its hours; the most hours beyond first. */
  readonly resources: readonly ResourceFinding[];
  /** Sheets that run out before their next arrival, the first first. */
  readonly sheets: readonly SheetFinding[];
}

/** Share from which a week counts as full: nothing unforeseen fits in any more. Ours; common practice, no source. */
const FULL_SHARE = 0.9;
const MOST_ORDERS = 10;
const DAY_SECONDS = 86_400;

/**
 * What the plant manager has to know of a load. The bottleneck is the resource with the most work beyond its hours, per unit;
 * where nothing is beyond, the one with the fullest week.
 */
export function loadFindings(load: PlantLoad): LoadFindings {
  const all = RESOURCE_KINDS.flatMap((kind) =>
    load.resources(kind).map((resource): Weekly => weeklyOf(resource, load.weeks)),
  ).filter(({ weeks }) => weeks.length > 0);
  const found = all.flatMap((weekly): readonly ResourceFinding[] => {
    const limit = weekly.resource.hours.kind === "mould" ? FULL_SHARE : 1;
    const weeks = weekly.weeks.filter((week) => isAbove(week, limit));
    return weeks.length === 0 ? [] : [findingOf(load, weekly.resource, weeks)];
  });
  return {
    bottleneck: bottleneckOf(load, all),
    resources: found.sort(
      (a, b) => b.beyond / b.units - a.beyond / a.units || shareOf(b.worst) - shareOf(a.worst),
    ),
    sheets: sheetFindings(load),
  };
}

/** A resource and its weeks with any load. */
interface Weekly {
  readonly resource: LoadedResource;
  readonly weeks: readonly LoadedWeek[];
}

function weeklyOf(resource: LoadedResource, buckets: readonly Bucket[]): Weekly {
  const loads = resourceLoads(resource, buckets);
  const weeks = buckets.map((bucket, index) => ({ bucket, load: loads[index] as ResourceLoad }));
  return { resource, weeks: weeks.filter(({ load }) => load.committed + load.overload > 0) };
}

/** Work where there are no hours at all is beyond every share. */
const shareOf = ({ load }: LoadedWeek): number => load.share ?? Number.POSITIVE_INFINITY;
const isAbove = (week: LoadedWeek, limit: number): boolean => shareOf(week) > limit;
const beyondOf = (weeks: readonly LoadedWeek[]): number =>
  weeks.reduce((sum, { load }) => sum + load.overload, 0);
const fullest = (weeks: readonly LoadedWeek[]): LoadedWeek =>
  weeks.reduce((best, week) => (shareOf(week) > shareOf(best) ? week : best));

function findingOf(load: PlantLoad, resource: LoadedResource, weeks: readonly LoadedWeek[]): ResourceFinding {
  const { kind, id, units } = resource.hours;
  const worst = fullest(weeks);
  return {
    kind,
    id,
    units,
    weeks,
    worst,
    beyond: beyondOf(weeks),
    reliefs: reliefIn(load, resource, worst.bucket),
  };
}

function bottleneckOf(load: PlantLoad, all: readonly Weekly[]): Bottleneck | null {
  const beyond = ({ resource, weeks }: Weekly): number => beyondOf(weeks) / Math.max(1, resource.hours.units);
  const [first] = all.toSorted(
    (a, b) => beyond(b) - beyond(a) || shareOf(fullest(b.weeks)) - shareOf(fullest(a.weeks)),
  );
  if (first === undefined) return null;
  const full = first.weeks.filter((week) => isAbove(week, FULL_SHARE));
  const weeks = full.length === 0 ? [fullest(first.weeks)] : full;
  const amounts = new Map<string, number>();
  for (const { bucket } of weeks)
    for (const { orderId, run, change } of orderLoads(first.resource, bucket))
      amounts.set(orderId, (amounts.get(orderId) ?? 0) + run + change);
  const orders = [...amounts]
    .map(([orderId, amount]) => ({ orderId, amount }))
    .sort((a, b) => b.amount - a.amount || (a.orderId < b.orderId ? -1 : 1));
  return {
    ...findingOf(load, first.resource, weeks),
    orders: orders.slice(0, MOST_ORDERS),
    orderCount: orders.length,
  };
}

/** Sheets against what runs of the plan need at their start and rough-cut work needs day by day; start-up scrap is left out. */
function sheetFindings(load: PlantLoad): readonly SheetFinding[] {
  const uses = sheetUses(load);
  return load.plant.sheets
    .flatMap((sheet): readonly SheetFinding[] => {
      const arrivals = sheet.arrivals.map(({ at, kg }) => ({
        at: instantOfLocalText(load.plant.timeZone, at) ?? load.window.end,
        kg,
      }));
      const ranOut = sheetRunOut(sheet.stockKg, arrivals, uses.get(sheet.id) ?? []);
      return ranOut === null ? [] : [{ sheetId: sheet.id, ...ranOut }];
    })
    .sort((a, b) => a.at - b.at);
}

function sheetUses({
  plant,
  orders,
  document,
  roughCut,
  ways,
}: PlantLoad): ReadonlyMap<string, readonly SheetMove[]> {
  const products = new Map<string, PlantLoad["plant"]["products"][number]>(
    plant.products.map((product) => [product.id, product]),
  );
  const productOf = new Map<string, string>(orders.map(({ id, productId }) => [id, productId]));
  const uses = new Map<string, SheetMove[]>();
  const use = (productId: string | undefined, pieces: number, at: number): void => {
    const product = products.get(productId ?? "");
    if (product === undefined || pieces <= 0) return;
    const kg = pieces * (ways.byProduct.get(product.id)?.sheetKgPerPiece ?? 0);
    const known = uses.get(product.sheetId) ?? [];
    known.push({ at, kg });
    uses.set(product.sheetId, known);
  };
  for (const segment of document?.segments ?? []) {
    if (segment.kind !== "run") continue;
    use(segment.productId, segment.pieces, instantOfIso(segment.start) ?? 0);
  }
  for (const { orderId, from, to, parts } of roughCut.placements) {
    for (const { run, over, pieces } of parts) {
      if (run === 0) continue;
      const work = { kind: "run", amount: run, over, from, to, orderId } as const;
      for (let start = from; start < to; start += DAY_SECONDS) {
        const part = roughPart(work, { start, end: Math.min(to, start + DAY_SECONDS) });
        use(productOf.get(orderId), (pieces * part) / run, start);
      }
    }
  }
  return uses;
}
