import type { Plan, RunSegment, Segment, StopSegment } from "../plan/plan.ts";
import type {
  ChangeSpec,
  Job,
  JobOption,
  ProblemData,
  ProblemLine,
  ProblemMould,
  ProblemTeam,
  SetupState,
} from "../problem/problem-data.ts";

/** One lot in order of time; at least one of its segments is a run. */
export interface LotOnLine {
  readonly orderId: string;
  readonly lot: number;
  readonly job: Job;
  readonly line: ProblemLine;
  /** The order's possibility of this line and set-up, or null. */
  readonly option: JobOption | null;
  readonly lineId: string;
  readonly setupId: string;
  /** Without the services before it. */
  readonly segments: readonly (RunSegment | StopSegment)[];
  /** Services of its mould, in order of start. */
  readonly services: readonly StopSegment[];
  readonly stretches: readonly RunSegment[];
  readonly start: number;
  readonly end: number;
  /** Pieces of all stretches. */
  readonly pieces: number;
}

/** A sound plan beside its problem, looked up by id. Every id in the plan is known here. */
export interface PlanLookUps {
  readonly problem: ProblemData;
  readonly plan: Plan;
  readonly lines: ReadonlyMap<string, ProblemLine>;
  readonly jobs: ReadonlyMap<string, Job>;
  readonly setups: ReadonlyMap<string, SetupState>;
  readonly teams: ReadonlyMap<string, ProblemTeam>;
  readonly moulds: ReadonlyMap<string, ProblemMould>;
  /** Segments by line, in order of their start. Every line has an entry. */
  readonly segmentsOfLine: ReadonlyMap<string, readonly Segment[]>;
  /** In order of start, then of order and lot. Made from the segments, not from the plan's own summary. */
  readonly lots: readonly LotOnLine[];
  /** The lots of each order that has any, in order of start. */
  readonly lotsOfOrder: ReadonlyMap<string, readonly LotOnLine[]>;
  /** Stops of lots that never run. */
  readonly orphanStops: readonly StopSegment[];
  /** Null: no change is needed, be it that the entry is -1 or that nothing is known to be mounted. */
  readonly changeIndexOf: (line: ProblemLine, fromSetupId: string | null, toSetupId: string) => number | null;
  readonly changeSpecOf: (index: number) => ChangeSpec | null;
}

function byStart(a: Segment, b: Segment): number {
  return a.start - b.start;
}

function groupByLine(problem: ProblemData, plan: Plan): Map<string, Segment[]> {
  const groups = new Map<string, Segment[]>(problem.lines.map((line) => [line.id, []]));
  for (const segment of plan.segments) groups.get(segment.lineId)?.push(segment);
  for (const group of groups.values()) group.sort(byStart);
  return groups;
}

/** Whether a segment is the service of a mould before a lot. */
export function isService(segment: Segment | undefined): segment is StopSegment {
  return segment?.kind === "stop" && segment.reason === "service";
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** What the plan has of one lot, in order of start once it is complete. */
interface LotParts {
  readonly segments: (RunSegment | StopSegment)[];
  readonly services: StopSegment[];
  readonly stretches: RunSegment[];
}

/** The segments of each lot. */
function partsOfLots(plan: Plan): LotParts[] {
  const all: LotParts[] = [];
  // by the lot's number, then by order: cheaper than one key of both
  const known = new Map<number, Map<string, LotParts>>();
  for (const segment of plan.segments) {
    if (segment.kind === "change") continue;
    let ofNumber = known.get(segment.lot);
    if (ofNumber === undefined) known.set(segment.lot, (ofNumber = new Map<string, LotParts>()));
    let parts = ofNumber.get(segment.orderId);
    if (parts === undefined) {
      parts = { segments: [], services: [], stretches: [] };
      ofNumber.set(segment.orderId, parts);
      all.push(parts);
    }
    if (isService(segment)) parts.services.push(segment);
    else parts.segments.push(segment);
    if (segment.kind === "run") parts.stretches.push(segment);
  }
  return all;
}

function optionOf(job: Job, lineId: string, setupId: string): JobOption | null {
  const { options } = job;
  // by index: the longest loop of all, and an iterator is slow before it is compiled
  for (let index = 0; index < options.length; index++) {
    const option = options[index];
    if (option?.lineId === lineId && option.setupId === setupId) return option;
  }
  return null;
}

/** The possibility of its order that a stretch runs by, or null. */
export function optionOfRun(
  context: PlanLookUps,
  { orderId, lineId, setupId }: RunSegment,
): JobOption | null {
  // nearly always that of a lot, which is known
  for (const lot of context.lotsOfOrder.get(orderId) ?? [])
    if (lot.lineId === lineId && lot.setupId === setupId) return lot.option;
  const job = context.jobs.get(orderId);
  return job === undefined ? null : optionOf(job, lineId, setupId);
}

function compareLots(a: LotOnLine, b: LotOnLine): number {
  return a.start - b.start || compareTexts(a.orderId, b.orderId) || a.lot - b.lot;
}

function sortByStart(segments: Segment[]): void {
  if (segments.length > 1) segments.sort(byStart);
}

type LotLookUps = Pick<PlanLookUps, "lots" | "lotsOfOrder" | "orphanStops">;

function lotsOf(plan: Plan, { jobs, lines }: Pick<PlanLookUps, "jobs" | "lines">): LotLookUps {
  const lots: LotOnLine[] = [];
  const orphanStops: StopSegment[] = [];
  for (const parts of partsOfLots(plan)) {
    const { segments, services, stretches } = parts;
    sortByStart(segments);
    sortByStart(services);
    sortByStart(stretches);
    const first = stretches[0];
    const last = stretches[stretches.length - 1];
    const job = first === undefined ? undefined : jobs.get(first.orderId);
    const line = first === undefined ? undefined : lines.get(first.lineId);
    if (first === undefined || last === undefined || job === undefined || line === undefined) {
      for (const stop of [...services, ...segments]) if (stop.kind === "stop") orphanStops.push(stop);
      continue;
    }
    let pieces = 0;
    for (const stretch of stretches) pieces += stretch.pieces;
    const { orderId, lot, lineId, setupId, start } = first;
    const option = optionOf(job, lineId, setupId);
    const { end } = last;
    // every field by its name: spread records are slow before they are compiled
    lots.push({
      orderId,
      lot,
      job,
      line,
      option,
      lineId,
      setupId,
      segments,
      services,
      stretches,
      start,
      end,
      pieces,
    });
  }
  lots.sort(compareLots);
  const lotsOfOrder = new Map<string, LotOnLine[]>();
  for (const lot of lots) {
    const ofOrder = lotsOfOrder.get(lot.orderId);
    if (ofOrder === undefined) lotsOfOrder.set(lot.orderId, [lot]);
    else ofOrder.push(lot);
  }
  return { lots, lotsOfOrder, orphanStops };
}

/** Prepares the look-ups that the rules share. */
export function planLookUps(problem: ProblemData, plan: Plan): PlanLookUps {
  const jobs = new Map(problem.jobs.map((job) => [job.orderId, job]));
  const lines = new Map(problem.lines.map((line) => [line.id, line]));
  const classes = new Map(problem.changeClasses.map((changeClass) => [changeClass.id, changeClass.matrix]));
  const setupIndex = new Map(problem.setups.map((setup, index) => [setup.id, index]));
  return {
    problem,
    plan,
    jobs,
    lines,
    setups: new Map(problem.setups.map((setup) => [setup.id, setup])),
    teams: new Map(problem.teams.map((team) => [team.id, team])),
    moulds: new Map(problem.moulds.map((mould) => [mould.id, mould])),
    segmentsOfLine: groupByLine(problem, plan),
    ...lotsOf(plan, { jobs, lines }),
    changeIndexOf: (line, fromSetupId, toSetupId) => {
      if (fromSetupId === null) return null;
      const row = classes.get(line.changeClassId)?.[setupIndex.get(fromSetupId) ?? -1];
      const index = row?.[setupIndex.get(toSetupId) ?? -1] ?? -1;
      return index < 0 ? null : index;
    },
    changeSpecOf: (index) => problem.changes[index] ?? null,
  };
}
