import type { MouldCopy } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { keepsMould, type LineStep } from "./line-history.ts";
import { sayDuration, sayInstant } from "./wording.ts";

/** A copy on a line, from the start of mounting to the end of dismounting. */
interface Stay {
  readonly mould: MouldCopy;
  readonly lineId: string;
  readonly from: number;
  readonly to: number;
}

function sayMould(mould: MouldCopy | null): string {
  return mould === null ? "no mould" : `mould ${mould.mouldId} copy ${mould.copy + 1}`;
}

function sameMould(a: MouldCopy | null, b: MouldCopy | null): boolean {
  return a?.mouldId === b?.mouldId && a?.copy === b?.copy;
}

/** What the step should say is dismounted, mounted or run with, against what it says. */
function stepFaults(context: AuditContext, step: LineStep): Violation[] {
  const { segment, before } = step;
  const subject = {
    lineId: segment.lineId,
    orderId: segment.kind === "run" ? segment.orderId : null,
    at: segment.start,
  };
  const faults: Violation[] = [];
  const expect = (what: string, given: MouldCopy | null, right: boolean, wanted: string) => {
    if (!right) {
      const text = `Line ${segment.lineId} ${sayInstant(context.problem, segment.start)}: ${what} is ${sayMould(given)}; it should be ${wanted}.`;
      faults.push(finding("wrong-mould", subject, text));
    }
    if (given === null) return;
    const copies = context.moulds.get(given.mouldId)?.copies ?? 0;
    if (given.copy < copies) return;
    const text = `Line ${segment.lineId}: ${what} is copy ${given.copy + 1} of mould ${given.mouldId}, of which there are ${copies}.`;
    faults.push(finding("mould-copy-unknown", subject, text));
  };
  if (step.kind === "run") {
    const run = step.segment;
    const mouldId = context.setups.get(run.setupId)?.mouldId ?? null;
    const rightMould = (run.mould?.mouldId ?? null) === mouldId;
    const right = rightMould && (step.swapsFreely || sameMould(run.mould, before.mould));
    const wanted = step.swapsFreely ? `mould ${mouldId ?? "none"}` : sayMould(before.mould);
    expect("the mould of the run", run.mould, right, wanted);
    return faults;
  }
  const { mouldOut, mouldIn, toSetupId } = step.segment;
  const stays = keepsMould(context, before.setupId, toSetupId);
  const incoming = stays ? null : (context.setups.get(toSetupId)?.mouldId ?? null);
  const outgoing = stays ? null : before.mould;
  expect("the mould taken out", mouldOut, sameMould(mouldOut, outgoing), sayMould(outgoing));
  const rightIn = (mouldIn?.mouldId ?? null) === incoming;
  expect("the mould put in", mouldIn, rightIn, incoming === null ? "no mould" : `mould ${incoming}`);
  return faults;
}

/** Stays of copies on one line, the last one open-ended. */
function staysOf(steps: readonly LineStep[], lineId: string): Stay[] {
  const stays: Stay[] = [];
  const first = steps[0];
  let hanging: MouldCopy | null = first?.before.mould ?? null;
  let since = -Infinity;
  const takeOut = (to: number) => {
    if (hanging !== null) stays.push({ mould: hanging, lineId, from: since, to });
    hanging = null;
  };
  const putIn = (mould: MouldCopy | null, from: number) => {
    hanging = mould;
    since = from;
  };
  for (const step of steps) {
    if (step.kind === "change") {
      const { mouldOut, mouldIn, mountStart } = step.segment;
      if (mouldOut !== null) takeOut(mountStart);
      if (mouldIn !== null) putIn(mouldIn, mountStart);
    } else if (step.swapsFreely) {
      takeOut(step.heldFrom);
      putIn(step.segment.mould, step.heldFrom);
    }
  }
  takeOut(Infinity);
  return stays;
}

/** A line without steps still holds what hung there. */
function idleStay(context: AuditContext, lineId: string): Stay[] {
  const initial = context.lines.get(lineId)?.initial ?? null;
  const mouldId = initial === null ? null : (context.setups.get(initial.setupId)?.mouldId ?? null);
  if (initial === null || mouldId === null || initial.copy === null) return [];
  return [{ mould: { mouldId, copy: initial.copy }, lineId, from: -Infinity, to: Infinity }];
}

function clashes(context: AuditContext, stays: readonly Stay[], carryingSeconds: number): Violation[] {
  const sorted = [...stays].sort((a, b) => (a.from === b.from ? 0 : a.from - b.from));
  const found: Violation[] = [];
  let latest: Stay | null = null;
  for (const stay of sorted) {
    if (latest !== null && stay.from > -Infinity) {
      const carrying = latest.lineId === stay.lineId ? 0 : carryingSeconds;
      if (stay.from < latest.to + carrying) {
        const when = sayInstant(context.problem, stay.from);
        const why =
          latest.to === Infinity
            ? `still hangs on line ${latest.lineId}`
            : `leaves line ${latest.lineId} ${sayInstant(context.problem, latest.to)} and needs ${sayDuration(carrying)} to be carried`;
        const text = `Line ${stay.lineId} takes ${sayMould(stay.mould)} ${when}, but it ${why}.`;
        found.push(finding("mould-copy-taken", { lineId: stay.lineId, at: stay.from }, text));
      }
    }
    if (latest === null || stay.to >= latest.to) latest = stay;
  }
  return found;
}

/** Mounting work or a lot, as a use of a copy. */
interface Use {
  readonly mould: MouldCopy | null;
  readonly lineId: string;
  readonly orderId: string | null;
  readonly from: number;
  readonly to: number;
}

function usesOf(context: AuditContext, steps: readonly LineStep[]): Use[] {
  const mountings = steps.flatMap(({ segment }): Use[] =>
    segment.kind === "run"
      ? []
      : [
          {
            mould: segment.mouldIn,
            lineId: segment.lineId,
            orderId: null,
            from: segment.mountStart,
            to: segment.end,
          },
        ],
  );
  const lots = context.lots.map((lot): Use => ({
    mould: lot.stretches[0]?.mould ?? null,
    lineId: lot.lineId,
    orderId: lot.orderId,
    from: lot.start,
    to: lot.end,
  }));
  return [...mountings, ...lots];
}

function outOfServiceFaults(context: AuditContext, use: Use): Violation[] {
  const { mould, lineId, orderId } = use;
  if (mould === null) return [];
  return (context.moulds.get(mould.mouldId)?.outOfService ?? [])
    .filter((spell) => spell.copy === mould.copy && use.from < spell.end && use.to > spell.start)
    .map((spell) => {
      const at = Math.max(use.from, spell.start);
      const text = `Line ${lineId} uses ${sayMould(mould)} ${sayInstant(context.problem, at)}, in its ${sayDuration(spell.end - spell.start)} out of service.`;
      return finding("mould-copy-out-of-service", { lineId, orderId, at }, text);
    });
}

/** Rule 2: every copy on one line at a time, carried between lines, in service, and the one that the plan says hangs there. */
export function mouldCopies(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  const staysOfCopy = new Map<string, Stay[]>();
  const allSteps: LineStep[] = [];
  for (const line of context.problem.lines) {
    const steps = context.stepsOfLine.get(line.id) ?? [];
    allSteps.push(...steps);
    found.push(...steps.flatMap((step) => stepFaults(context, step)));
    for (const stay of steps.length > 0 ? staysOf(steps, line.id) : idleStay(context, line.id)) {
      const key = `${stay.mould.copy} ${stay.mould.mouldId}`;
      const known = staysOfCopy.get(key);
      if (known === undefined) staysOfCopy.set(key, [stay]);
      else known.push(stay);
    }
  }
  for (const stays of staysOfCopy.values()) {
    const carrying = context.moulds.get(stays[0]?.mould.mouldId ?? "")?.carryingSeconds ?? 0;
    found.push(...clashes(context, stays, carrying));
  }
  return [...found, ...usesOf(context, allSteps).flatMap((use) => outOfServiceFaults(context, use))];
}
