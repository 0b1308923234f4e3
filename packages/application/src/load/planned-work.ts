import {
  WHOLE_UNIT,
  clipWorkingTime,
  spellsOf,
  type Plant,
  type PlannedWork,
  type PlantHours,
  type ResourceKind,
} from "@formweek/capacity-model";
import { instantOfIso } from "../planning/iso-instant.ts";
import type { DocumentChange, DocumentRun, PlanDocument } from "../planning/plan-document.ts";

/** Work by resource; what nothing is known of has none. */
export class WorkByResource<Work> {
  readonly #works = new Map<ResourceKind, Map<string, Work[]>>();

  add(kind: ResourceKind, id: string, work: Work): void {
    const ofKind = this.#works.get(kind) ?? new Map<string, Work[]>();
    this.#works.set(kind, ofKind);
    const known = ofKind.get(id);
    if (known === undefined) ofKind.set(id, [work]);
    else known.push(work);
  }

  of(kind: ResourceKind, id: string): readonly Work[] {
    return this.#works.get(kind)?.get(id) ?? [];
  }
}

const at = (text: string): number => {
  const instant = instantOfIso(text);
  if (instant === null) throw new Error(`a stored plan holds the instant "${text}"`);
  return instant;
};

/**
 * What a plan does with each line, mould, setter team and operator pool. A change counts for the order that runs after it. A mould
 * is busy while it is taken out or put in, and through the changes of a line on which it stays.
 */
export function plannedWork(
  { segments }: PlanDocument,
  plant: Plant,
  hours: PlantHours,
): WorkByResource<PlannedWork> {
  const works = new WorkByResource<PlannedWork>();
  const lines = new Map<string, Plant["lines"][number]>(plant.lines.map((line) => [line.id, line]));
  const nextRun = new Map<string, DocumentRun>();
  for (const segment of segments.toReversed()) {
    const { lineId } = segment;
    const span = { start: at(segment.start), end: at(segment.end), amount: WHOLE_UNIT };
    if (segment.kind === "change") addChange(segment, nextRun.get(lineId) ?? null, works, hours);
    if (segment.kind === "stop" && segment.reason !== "closed")
      works.add("line", lineId, { kind: "stop", ...span, orderId: segment.orderId });
    if (segment.kind !== "run") continue;
    nextRun.set(lineId, segment);
    const work = { kind: "run", ...span, orderId: segment.orderId } as const;
    works.add("line", lineId, work);
    if (segment.mould !== null) works.add("mould", segment.mould.mouldId, work);
    const line = lines.get(lineId);
    const amount = Math.round((line?.operatorsNeeded ?? 0) * WHOLE_UNIT);
    const poolId = line?.operatorPoolId ?? null;
    if (poolId !== null && amount > 0) works.add("pool", poolId, { ...work, amount });
  }
  return works;
}

function addChange(
  change: DocumentChange,
  next: DocumentRun | null,
  works: WorkByResource<PlannedWork>,
  hours: PlantHours,
): void {
  const [start, mountStart, tailStart, end] = [
    at(change.start),
    at(change.mountStart),
    at(change.tailStart),
    at(change.end),
  ];
  const work = { kind: "change", start, end, amount: WHOLE_UNIT, orderId: next?.orderId ?? null } as const;
  works.add("line", change.lineId, work);
  const { mouldOut, mouldIn, teamId } = change;
  if (mouldOut !== null) works.add("mould", mouldOut.mouldId, { ...work, end: mountStart });
  if (mouldIn !== null) works.add("mould", mouldIn.mouldId, { ...work, start: mountStart });
  const staying = mouldOut === null && mouldIn === null ? (next?.mould ?? null) : null;
  if (staying !== null) works.add("mould", staying.mouldId, work);
  if (teamId === null) return;
  for (const [from, to] of spellsOf(clipWorkingTime(hours.team(teamId), start, tailStart)))
    works.add("team", teamId, { ...work, start: from, end: to });
}
