import type { Plan, RunSegment, Segment, StopSegment } from "../plan/plan.ts";
import type {
  ChangeSpec,
  Job,
  JobOption,
  ProblemData,
  ProblemLine,
  ProblemMould,
  SetupState,
} from "../problem/problem-data.ts";

/** One lot in order of time; at least one of its segments is a run. */
export interface LotOnLine {
  readonly orderId: string;
  readonly lot: number;
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
  readonly moulds: ReadonlyMap<string, ProblemMould>;
  /** Segments by line, in order of their start. Every line has an entry. */
  readonly segmentsOfLine: ReadonlyMap<string, readonly Segment[]>;
  /** In order of start, then of order and lot. Made from the segments, not from the plan's own summary. */
  readonly lots: readonly LotOnLine[];
  /** Stops of lots that never run. */
  readonly orphanStops: readonly StopSegment[];
  readonly optionOf: (orderId: string, lineId: string, setupId: string) => JobOption | null;
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

function lotsOf(plan: Plan): { readonly lots: LotOnLine[]; readonly orphanStops: StopSegment[] } {
  const groups = new Map<string, (RunSegment | StopSegment)[]>();
  for (const segment of plan.segments) {
    if (segment.kind === "change") continue;
    const key = `${segment.lot} ${segment.orderId}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [segment]);
    else group.push(segment);
  }
  const lots: LotOnLine[] = [];
  const orphanStops: StopSegment[] = [];
  for (const all of groups.values()) {
    all.sort(byStart);
    const services = all.flatMap((segment) => (isService(segment) ? [segment] : []));
    const segments = all.filter((segment) => !isService(segment));
    const stretches = segments.filter((segment) => segment.kind === "run");
    const first = stretches[0];
    const last = stretches[stretches.length - 1];
    if (first === undefined || last === undefined) {
      orphanStops.push(...all.filter((segment) => segment.kind === "stop"));
      continue;
    }
    lots.push({
      orderId: first.orderId,
      lot: first.lot,
      lineId: first.lineId,
      setupId: first.setupId,
      segments,
      services,
      stretches,
      start: first.start,
      end: last.end,
      pieces: stretches.reduce((sum, stretch) => sum + stretch.pieces, 0),
    });
  }
  lots.sort((a, b) => a.start - b.start || compareTexts(a.orderId, b.orderId) || a.lot - b.lot);
  return { lots, orphanStops };
}

/** Lots of each order that has any, in order of start. */
export function lotsByOrder({ lots }: PlanLookUps): Map<string, LotOnLine[]> {
  const lotsOf = new Map<string, LotOnLine[]>();
  for (const lot of lots) {
    const known = lotsOf.get(lot.orderId);
    if (known === undefined) lotsOf.set(lot.orderId, [lot]);
    else known.push(lot);
  }
  return lotsOf;
}

/** Prepares the look-ups that the rules share. */
export function planLookUps(problem: ProblemData, plan: Plan): PlanLookUps {
  const jobs = new Map(problem.jobs.map((job) => [job.orderId, job]));
  const classes = new Map(problem.changeClasses.map((changeClass) => [changeClass.id, changeClass.matrix]));
  const setupIndex = new Map(problem.setups.map((setup, index) => [setup.id, index]));
  return {
    problem,
    plan,
    jobs,
    lines: new Map(problem.lines.map((line) => [line.id, line])),
    setups: new Map(problem.setups.map((setup) => [setup.id, setup])),
    moulds: new Map(problem.moulds.map((mould) => [mould.id, mould])),
    segmentsOfLine: groupByLine(problem, plan),
    ...lotsOf(plan),
    optionOf: (orderId, lineId, setupId) =>
      jobs.get(orderId)?.options.find((option) => option.lineId === lineId && option.setupId === setupId) ??
      null,
    changeIndexOf: (line, fromSetupId, toSetupId) => {
      if (fromSetupId === null) return null;
      const row = classes.get(line.changeClassId)?.[setupIndex.get(fromSetupId) ?? -1];
      const index = row?.[setupIndex.get(toSetupId) ?? -1] ?? -1;
      return index < 0 ? null : index;
    },
    changeSpecOf: (index) => problem.changes[index] ?? null,
  };
}
