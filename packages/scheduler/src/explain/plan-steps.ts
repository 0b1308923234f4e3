import type { ChangeSegment, MouldCopy, Plan, RunSegment, StopSegment } from "../plan/plan.ts";
import type { Job, ProblemData, ProblemLine } from "../problem/problem-data.ts";

/** One lot as a step of its line. */
export interface LotStep {
  readonly kind: "lot";
  readonly lineId: string;
  readonly orderId: string;
  readonly lot: number;
  readonly start: number;
  readonly end: number;
  readonly setupId: string;
  readonly mould: MouldCopy | null;
  readonly segments: readonly (RunSegment | StopSegment)[];
}

export interface ChangeStep {
  readonly kind: "change";
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
  readonly segment: ChangeSegment;
}

/** Service of the mould before a lot. */
export interface ServiceStep {
  readonly kind: "service";
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
  readonly orderId: string;
  readonly lot: number;
}

export type Step = LotStep | ChangeStep | ServiceStep;

/** A plan as steps, with what came before each of them. */
export interface PlanSteps {
  readonly problem: ProblemData;
  readonly jobs: ReadonlyMap<string, Job>;
  readonly lines: ReadonlyMap<string, ProblemLine>;
  /** Line by line, in order of time. */
  readonly all: readonly Step[];
  readonly lots: readonly LotStep[];
  readonly lotsByOrder: ReadonlyMap<string, readonly LotStep[]>;
  readonly lotsBySheet: ReadonlyMap<string, readonly LotStep[]>;
  /** Changes that take a copy of a mould off its line, by `copyKey`. */
  readonly dismounts: ReadonlyMap<string, readonly ChangeStep[]>;
  readonly changesByTeam: ReadonlyMap<string, readonly ChangeStep[]>;
  readonly changesByTrolley: ReadonlyMap<string, readonly ChangeStep[]>;
  /** The step before on the same line; null for the first. */
  readonly before: (step: Step) => Step | null;
  /** The lot that a change or a service on its line is done for; null for a stripping change. */
  readonly lotAfter: (step: ChangeStep | ServiceStep) => LotStep | null;
}

/** One copy of a mould as a key. */
export const copyKey = ({ mouldId, copy }: MouldCopy): string => `${copy} ${mouldId}`;

/** Entries by key, in the order given; those without a key are left out. */
function grouped<T>(entries: readonly T[], keyOf: (entry: T) => string | null): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of entries) {
    const key = keyOf(entry);
    if (key === null) continue;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  return groups;
}

function stepsOfLine(plan: Plan, lineId: string): Step[] {
  const steps: Step[] = [];
  let open: { step: LotStep; segments: (RunSegment | StopSegment)[] } | null = null;
  const segments = plan.segments
    .filter((segment) => segment.lineId === lineId)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  for (const segment of segments) {
    if (segment.kind === "change") {
      open = null;
      steps.push({ kind: "change", lineId, start: segment.start, end: segment.end, segment });
      continue;
    }
    const isService = segment.kind === "stop" && segment.reason === "service";
    if (
      !isService &&
      open !== null &&
      open.step.orderId === segment.orderId &&
      open.step.lot === segment.lot
    ) {
      open.segments.push(segment);
      open.step = { ...open.step, end: segment.end };
      steps[steps.length - 1] = open.step;
      continue;
    }
    if (segment.kind === "stop") {
      if (!isService) continue;
      const { start, end, orderId, lot } = segment;
      open = null;
      steps.push({ kind: "service", lineId, start, end, orderId, lot });
      continue;
    }
    const own = [segment];
    const { orderId, lot, start, end, setupId, mould } = segment;
    const step: LotStep = {
      kind: "lot",
      lineId,
      orderId,
      lot,
      start,
      end,
      setupId,
      mould,
      segments: own,
    };
    open = { step, segments: own };
    steps.push(step);
  }
  return steps;
}

/** Puts a plan into steps. O(segments × log). */
export function planSteps(problem: ProblemData, plan: Plan): PlanSteps {
  const previous = new Map<Step, Step>();
  const served = new Map<Step, LotStep>();
  const all: Step[] = [];
  for (const line of problem.lines) {
    const steps = stepsOfLine(plan, line.id);
    steps.forEach((step, index) => {
      const before = steps[index - 1];
      if (before !== undefined) previous.set(step, before);
      const change = before?.kind === "service" ? steps[index - 2] : before;
      if (step.kind === "lot" && before?.kind === "service") served.set(before, step);
      if (step.kind === "lot" && change?.kind === "change" && !change.segment.stripping)
        served.set(change, step);
      all.push(step);
    });
  }
  const jobs = new Map(problem.jobs.map((job) => [job.orderId, job]));
  const lots = all.filter((step) => step.kind === "lot");
  const changes = all.filter((step) => step.kind === "change");
  return {
    problem,
    jobs,
    lines: new Map(problem.lines.map((line) => [line.id, line])),
    all,
    lots,
    lotsByOrder: grouped(lots, ({ orderId }) => orderId),
    lotsBySheet: grouped(lots, ({ orderId }) => jobs.get(orderId)?.sheetId ?? null),
    dismounts: grouped(changes, ({ segment: { mouldOut } }) =>
      mouldOut === null ? null : copyKey(mouldOut),
    ),
    changesByTeam: grouped(changes, ({ segment }) => segment.teamId),
    changesByTrolley: grouped(changes, ({ segment }) => segment.trolleyId),
    before: (step) => previous.get(step) ?? null,
    lotAfter: (step) => served.get(step) ?? null,
  };
}
