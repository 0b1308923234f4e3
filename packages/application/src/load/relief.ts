import {
  WHOLE_UNIT,
  addedShiftSpan,
  localDateText,
  localDayAt,
  plantHours,
  resourceLoads,
  spellsOf,
  workingBetween,
  type AddedShift,
  type Bucket,
  type LoadedResource,
  type Plant,
  type ResourceLoad,
  type Steps,
  type TimeWindow,
  AddedShift as AddedShiftRecord,
} from "@formweek/capacity-model";
import type { PlantLoad } from "./plant-load.ts";

/** What one measure would give a resource in one bucket; worked out by the same sums with the measure in the plant's records. */
export interface ReliefGain {
  /** More time to work in, seconds × hundredths of a unit. */
  readonly gained: number;
  readonly shareBefore: number | null;
  readonly shareAfter: number | null;
}

export type Relief =
  /** One more shift, at the hours of a shift that the plant knows. */
  | (ReliefGain & { readonly kind: "shift"; readonly shift: AddedShift; readonly span: TimeWindow })
  /** One more copy of the mould. */
  | (ReliefGain & { readonly kind: "copy"; readonly copies: number });

/** What one more shift, and for a mould one more copy, would give in a bucket; what gives nothing is left out. */
export function reliefIn(load: PlantLoad, resource: LoadedResource, bucket: Bucket): readonly Relief[] {
  const before = loadOf(resource, bucket);
  const gainOf = (plant: Plant): ReliefGain | null => {
    const hours = plantHours(plant, bucket, load.ways.linesOfMoulds)
      .of(resource.hours.kind)
      .find(({ id }) => id === resource.hours.id);
    const after = hours === undefined ? before : loadOf({ ...resource, hours }, bucket);
    const gained = attainable(after) - attainable(before);
    return gained <= 0 ? null : { gained, shareBefore: before.share, shareAfter: after.share };
  };
  const reliefs: Relief[] = [];
  const offer = bestShift(load, resource, bucket);
  if (offer !== null) {
    const { shift, span } = offer;
    const gain = gainOf({ ...load.plant, addedShifts: [...load.plant.addedShifts, shift] });
    if (gain !== null) reliefs.push({ kind: "shift", shift, span, ...gain });
  }
  if (resource.hours.kind === "mould") {
    const copies = resource.hours.units / WHOLE_UNIT + 1;
    const moulds = load.plant.moulds.map((mould) =>
      mould.id === resource.hours.id ? { ...mould, copies } : mould,
    );
    const gain = gainOf({ ...load.plant, moulds });
    if (gain !== null) reliefs.push({ kind: "copy", copies, ...gain });
  }
  return reliefs;
}

const loadOf = (resource: LoadedResource, bucket: Bucket): ResourceLoad =>
  resourceLoads(resource, [bucket])[0] as ResourceLoad;
const attainable = ({ committed, available }: ResourceLoad): number => committed + available;

/** The shift that adds most time to the resource in the bucket, the earliest of equals; null where none adds any. */
function bestShift(
  load: PlantLoad,
  { hours }: LoadedResource,
  bucket: Bucket,
): { readonly shift: AddedShift; readonly span: TimeWindow } | null {
  const { plant } = load;
  const lineHours = plantHours(plant, bucket, new Map());
  const clocks = new Map(
    plant.calendars
      .flatMap(({ shifts }) => shifts)
      .map(({ name, start, end, breaks }) => [JSON.stringify([start, end]), { name, start, end, breaks }]),
  );
  let best: { gain: number; shift: AddedShift; span: TimeWindow } | null = null;
  const [firstDay, lastDay] = [bucket.start, bucket.end - 1].map((at) => localDayAt(plant.timeZone, at));
  for (let day = firstDay ?? 0; day <= (lastDay ?? -1); day += 1) {
    for (const clock of clocks.values()) {
      const date = localDateText(day);
      const { start, end, workingTime } = addedShiftSpan({ ...clock, date }, plant.timeZone);
      if (start < bucket.start || end > bucket.end) continue;
      const spells = spellsOf(workingTime);
      const gain = spells.reduce((sum, [from, to]) => sum + roomIn(hours.open, hours.units, from, to), 0);
      if (gain <= (best?.gain ?? 0)) continue;
      const people = whoComes(load, hours, (lineId) =>
        spells.reduce((sum, [from, to]) => sum + workingBetween(lineHours.line(lineId), from, to), 0),
      );
      const shift = AddedShiftRecord.parse({ ...clock, date, ...people });
      best = { gain, shift, span: { start, end } };
    }
  }
  return best;
}

/** Seconds of [from, to) in which another unit could come. */
function roomIn({ at, value }: Steps, units: number, from: number, to: number): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((at[middle] as number) <= from) low = middle + 1;
    else high = middle;
  }
  let room = 0;
  let start = from;
  for (let index = low - 1; start < to; index += 1) {
    const end = Math.min(to, at[index + 1] ?? to);
    if ((index < 0 ? 0 : (value[index] as number)) < units) room += end - start;
    start = end;
  }
  return room;
}

/** Lines, teams or heads of one more shift: for a mould the line, of those that can take it, that is closed longest then. */
function whoComes(
  { plant, ways }: PlantLoad,
  { kind, id }: LoadedResource["hours"],
  openOn: (lineId: string) => number,
): Record<string, unknown> {
  switch (kind) {
    case "line":
      return { lineIds: [id] };
    case "team":
      return { lineIds: [], teamIds: [id] };
    case "pool": {
      const pool = plant.operatorPools.find((each) => each.id === id);
      const heads = Math.max(0.05, ...(pool?.crews ?? []).map((crew) => crew.heads));
      return { lineIds: [], operators: [{ poolId: id, heads }] };
    }
    case "mould": {
      const [line] = [...(ways.linesOfMoulds.get(id) ?? [])].sort((a, b) => openOn(a) - openOn(b));
      return { lineIds: line === undefined ? [] : [line] };
    }
  }
}
