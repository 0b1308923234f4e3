import type { ChangeSegment, MouldCopy, RunSegment } from "../plan/plan.ts";
import type { ProblemLine } from "../problem/problem-data.ts";
import { isService, type PlanLookUps } from "./plan-look-ups.ts";

/** What hangs on a line: its set-up (null: unknown, anything may follow without a change) and its mould copy. */
interface LineState {
  readonly setupId: string | null;
  readonly mould: MouldCopy | null;
}

/** A change, or a stretch of running, with what hung on the line when it began. */
export type LineStep =
  | {
      readonly kind: "change";
      readonly segment: ChangeSegment;
      readonly before: LineState;
      /** Whether a run is the next thing on the line. */
      readonly servesRun: boolean;
    }
  | {
      readonly kind: "run";
      readonly segment: RunSegment;
      readonly before: LineState;
      /** The last change since the run before, or null. */
      readonly servedBy: ChangeSegment | null;
      /** Start of the service before it, or of the run: from then on its mould is there at the latest. */
      readonly heldFrom: number;
      /** Whether moulds may swap by themselves at its start: the rules ask for no change into its set-up. */
      readonly swapsFreely: boolean;
    };

function initialState(context: PlanLookUps, line: ProblemLine): LineState {
  if (line.initial === null) return { setupId: null, mould: null };
  const mouldId = context.setups.get(line.initial.setupId)?.mouldId ?? null;
  const { copy } = line.initial;
  return {
    setupId: line.initial.setupId,
    mould: mouldId === null || copy === null ? null : { mouldId, copy },
  };
}

/** Replays a line from what it holds at the start through every change and run, believing what the plan says was mounted. */
export function lineHistory(context: PlanLookUps, line: ProblemLine): LineStep[] {
  const segments = context.segmentsOfLine.get(line.id) ?? [];
  const steps: LineStep[] = [];
  let state = initialState(context, line);
  let servedBy: ChangeSegment | null = null;
  let serviceStart: number | null = null;
  segments.forEach((segment, index) => {
    if (segment.kind === "stop") {
      if (isService(segment)) serviceStart = segment.start;
      return;
    }
    const heldFrom = serviceStart ?? segment.start;
    serviceStart = null;
    if (segment.kind === "run") {
      const swapsFreely =
        state.setupId !== segment.setupId &&
        context.changeIndexOf(line, state.setupId, segment.setupId) === null &&
        !keepsMould(context, state.setupId, segment.setupId);
      steps.push({ kind: "run", segment, before: state, servedBy, heldFrom, swapsFreely });
      state = { setupId: segment.setupId, mould: segment.mould };
      servedBy = null;
      return;
    }
    const next = segments[isService(segments[index + 1]) ? index + 2 : index + 1];
    steps.push({ kind: "change", segment, before: state, servesRun: next?.kind === "run" });
    const stays = keepsMould(context, state.setupId, segment.toSetupId);
    state = { setupId: segment.toSetupId, mould: stays ? state.mould : segment.mouldIn };
    servedBy = segment;
  });
  return steps;
}

/** Whether the same mould hangs in both set-ups (or none in either), so that nothing is mounted or dismounted. */
export function keepsMould(context: PlanLookUps, fromSetupId: string | null, toSetupId: string): boolean {
  if (fromSetupId === null) return false;
  return context.setups.get(fromSetupId)?.mouldId === context.setups.get(toSetupId)?.mouldId;
}
