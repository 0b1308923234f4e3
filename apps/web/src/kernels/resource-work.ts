import type { ChangeSegment, MouldCopy } from "@formweek/contracts";
import { secondsOf, type BoardPlan, type BoardSegment, type BoardSpell } from "./board-plan.ts";

/** What one resource does in a plan: segments with the part of each that takes it, seconds since the epoch. */
export interface ResourceWork<Resource> {
  readonly resource: Resource;
  readonly work: readonly (BoardSpell & { readonly segment: BoardSegment })[];
}

type Part = ResourceWork<unknown>["work"][number];

/**
 * Work of each mould copy that the plan uses, the busiest mould first, copies of one mould together. A copy is taken by
 * its runs, their stops, its mounting with what follows up to the first good piece, its dismounting, and by changes
 * around it while it hangs on the line.
 */
export function mouldWork(plan: BoardPlan): readonly ResourceWork<MouldCopy>[] {
  const found = new Map<string, { readonly resource: MouldCopy; readonly work: Part[] }>();
  const add = (resource: MouldCopy | null, part: Part): void => {
    if (resource === null) return;
    const key = JSON.stringify([resource.mouldId, resource.copy]);
    const known = found.get(key);
    if (known === undefined) found.set(key, { resource, work: [part] });
    else known.work.push(part);
  };
  for (const line of plan.lines) {
    for (const segment of line.segments) {
      const { source, start, end } = segment;
      if (source.kind === "run") add(source.mould, { segment, start, end });
      else if (source.kind === "stop") add(mouldAfter(line.segments, segment.place), { segment, start, end });
      else
        for (const [mould, part] of mouldsOfChange(line.segments, segment, source))
          add(mould, { ...part, segment });
    }
  }
  const works = [...found.values()];
  const ofMould = new Map<string, number>();
  for (const { resource, work } of works)
    ofMould.set(resource.mouldId, (ofMould.get(resource.mouldId) ?? 0) + spanOf(work));
  return works.sort(
    ({ resource: a }, { resource: b }) =>
      (ofMould.get(b.mouldId) ?? 0) - (ofMould.get(a.mouldId) ?? 0) ||
      inOrder(a.mouldId, b.mouldId) ||
      a.copy - b.copy,
  );
}

/** Changes of each setter team that the plan uses, the busiest team first: from their start until the setters are done. */
export function teamWork(plan: BoardPlan): readonly ResourceWork<string>[] {
  const found = new Map<string, Part[]>();
  for (const segment of plan.segments) {
    const { source } = segment;
    if (source.kind !== "change" || source.teamId === null) continue;
    const part = { segment, start: segment.start, end: secondsOf(source.tailStart) };
    const known = found.get(source.teamId);
    if (known === undefined) found.set(source.teamId, [part]);
    else known.push(part);
  }
  return [...found]
    .map(([resource, work]) => ({ resource, work }))
    .sort((a, b) => spanOf(b.work) - spanOf(a.work) || inOrder(a.resource, b.resource));
}

/** A change that keeps the mould names none: it is that of the run that follows. */
function mouldsOfChange(
  segments: readonly BoardSegment[],
  { place, start, end }: BoardSegment,
  { mouldOut, mouldIn, mountStart }: ChangeSegment,
): readonly (readonly [MouldCopy | null, BoardSpell])[] {
  const mount = secondsOf(mountStart);
  if (mouldOut === null && mouldIn === null) return [[mouldAfter(segments, place), { start, end }]];
  if (mouldOut?.mouldId === mouldIn?.mouldId && mouldOut?.copy === mouldIn?.copy)
    return [[mouldIn, { start, end }]];
  return [
    [mouldOut, { start, end: mount }],
    [mouldIn, { start: mount, end }],
  ];
}

function mouldAfter(segments: readonly BoardSegment[], place: number): MouldCopy | null {
  for (let next = place + 1; next < segments.length; next += 1) {
    const source = segments[next]?.source;
    if (source?.kind === "run") return source.mould;
  }
  return null;
}

function spanOf(work: readonly Part[]): number {
  return work.reduce((sum, { start, end }) => sum + end - start, 0);
}

function inOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
