import {
  compileCalendar,
  dayBuckets,
  plantHours,
  shiftBuckets,
  weekBuckets,
  type Bucket,
  type LoadedResource,
  type Order,
  type Plant,
  type ResourceKind,
  type RoughCut,
  type RoughWork,
  type TimeWindow,
  type WorkCalendar,
} from "@formweek/capacity-model";
import { isoInstant } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import { planWindow } from "../planning/plan-window.ts";
import { WorkByResource, plannedWork } from "./planned-work.ts";
import type { PlantWays } from "./product-ways.ts";
import { roughCutOf, roughWork } from "./rough-work.ts";

/** How far load is looked at. */
const LOAD_WEEKS = 26;

export type BucketSize = "shift" | "day" | "week";

export interface LoadInput {
  readonly plant: Plant;
  readonly orders: readonly Order[];
  /** The working plan; null for a plant that was never planned. */
  readonly document: PlanDocument | null;
  readonly now: number;
  readonly ways: PlantWays;
}

/** What a plant has to do against what it can do, over half a year. */
export interface PlantLoad extends Omit<LoadInput, "now"> {
  /** From the planning start to the end of the last whole week. */
  readonly window: TimeWindow;
  readonly roughCut: RoughCut;
  /** All resources of a kind, in the order of the plant's records. */
  readonly resources: (kind: ResourceKind) => readonly LoadedResource[];
  readonly weeks: readonly Bucket[];
}

/** Near weeks from the working plan, whatever has no place in it from the order book and forecasts. Pure. */
export function plantLoad({ plant, orders, document, now, ways }: LoadInput): PlantLoad {
  const weeks = weeksFrom(plant, planWindow(plant, now).start);
  const window = { start: weeks[0]?.start ?? now, end: weeks.at(-1)?.end ?? now };
  const hours = plantHours(plant, window, ways.linesOfMoulds);
  const future = document === null ? null : sinceStart(document, window.start);
  const planned = future === null ? new WorkByResource<never>() : plannedWork(future, plant, hours);
  const cut = roughCutOf({ plant, orders, document, ways, hours, planned, window });
  const rough: WorkByResource<RoughWork> = roughWork(cut, plant);
  return {
    plant,
    orders,
    document: future,
    window,
    ways,
    roughCut: cut,
    weeks,
    resources: (kind) =>
      hours.of(kind).map((each) => ({
        hours: each,
        planned: planned.of(kind, each.id),
        rough: rough.of(kind, each.id),
      })),
  };
}

/** Whole weeks but for the first, which begins with planning. */
function weeksFrom({ timeZone, firstWeekday }: Plant, start: number): readonly Bucket[] {
  const window = { start, end: start + (LOAD_WEEKS + 1) * 7 * 86_400 };
  return cutAt(start, weekBuckets(timeZone, window, firstWeekday).slice(0, LOAD_WEEKS));
}

function cutAt(start: number, buckets: readonly Bucket[]): readonly Bucket[] {
  return buckets.map((bucket) => (bucket.start < start ? { ...bucket, start } : bucket));
}

/** A plan without the segments that are over. */
function sinceStart(document: PlanDocument, start: number): PlanDocument {
  const from = isoInstant(start);
  return { ...document, segments: document.segments.filter(({ end }) => end > from) };
}

/** The buckets of a part of the load's window; shifts are those of the calendar that most resources of the kind go by. */
export function loadBuckets(
  { plant, window, weeks }: PlantLoad,
  kind: ResourceKind,
  size: BucketSize,
  span: TimeWindow,
): readonly Bucket[] {
  const part = { start: Math.max(span.start, window.start), end: Math.min(span.end, window.end) };
  const { timeZone } = plant;
  switch (size) {
    case "week":
      return weeks.filter(({ start, end }) => start < part.end && end > part.start);
    case "day":
      return cutAt(window.start, dayBuckets(timeZone, part));
    case "shift": {
      const calendar = commonCalendar(plant, kind);
      const shifts = calendar === null ? [] : compileCalendar({ calendar, timeZone, window: part }).shifts;
      return shiftBuckets(timeZone, shifts, part);
    }
  }
}

function commonCalendar(plant: Plant, kind: ResourceKind): WorkCalendar | null {
  const used = {
    line: plant.lines,
    mould: plant.lines,
    team: plant.setterTeams,
    pool: plant.operatorPools.flatMap(({ crews }) => crews),
  }[kind].map(({ calendarId }) => calendarId);
  const count = (calendar: WorkCalendar): number => used.filter((id) => id === calendar.id).length;
  return plant.calendars.reduce<WorkCalendar | null>(
    (best, calendar) => (best === null || count(calendar) > count(best) ? calendar : best),
    null,
  );
}
