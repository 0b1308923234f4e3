import type { ChangeSegment, MouldCopy } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import { finding } from "./finding.ts";
import { keepsMould, type LineStep } from "./line-history.ts";
import type { LotOnLine } from "./plan-look-ups.ts";
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

function wrongMould(context: AuditContext, { segment }: LineStep, is: string, wanted: string): Violation {
  const orderId = segment.kind === "run" ? segment.orderId : null;
  const text = `Line ${segment.lineId} ${sayInstant(context.problem, segment.start)}: ${is}; it should be ${wanted}.`;
  return finding("wrong-mould", { lineId: segment.lineId, orderId, at: segment.start }, text);
}

/** A copy that the mould does not have. */
function unknownCopies(
  context: AuditContext,
  { segment }: LineStep,
  what: string,
  given: MouldCopy | null,
): Violation[] {
  if (given === null) return [];
  const copies = context.moulds.get(given.mouldId)?.copies ?? 0;
  if (given.copy < copies) return [];
  const orderId = segment.kind === "run" ? segment.orderId : null;
  const text = `Line ${segment.lineId}: ${what} is copy ${given.copy + 1} of mould ${given.mouldId}, of which there are ${copies}.`;
  return [finding("mould-copy-unknown", { lineId: segment.lineId, orderId, at: segment.start }, text)];
}

/** The mould that the run should say it is made with, against what it says. */
function runFaults(context: AuditContext, step: LineStep & { readonly kind: "run" }): Violation[] {
  const { segment, before, swapsFreely } = step;
  const what = "the mould of the run";
  const mouldId = context.setups.get(segment.setupId)?.mouldId ?? null;
  const faults = unknownCopies(context, step, what, segment.mould);
  if (
    (segment.mould?.mouldId ?? null) !== mouldId ||
    !(swapsFreely || sameMould(segment.mould, before.mould))
  ) {
    const wanted = swapsFreely ? `mould ${mouldId ?? "none"}` : sayMould(before.mould);
    faults.push(wrongMould(context, step, `${what} is ${sayMould(segment.mould)}`, wanted));
  }
  return faults;
}

/** What the change should say is dismounted and mounted, against what it says. */
function changeFaults(context: AuditContext, step: LineStep & { readonly kind: "change" }): Violation[] {
  const { before } = step;
  const { mouldOut, mouldIn, toSetupId } = step.segment;
  const stays = keepsMould(context, before.setupId, toSetupId);
  const incoming = stays ? null : (context.setups.get(toSetupId)?.mouldId ?? null);
  const outgoing = stays ? null : before.mould;
  const faults = unknownCopies(context, step, "the mould taken out", mouldOut);
  faults.push(...unknownCopies(context, step, "the mould put in", mouldIn));
  if (!sameMould(mouldOut, outgoing)) {
    const is = `the mould taken out is ${sayMould(mouldOut)}`;
    faults.push(wrongMould(context, step, is, sayMould(outgoing)));
  }
  if ((mouldIn?.mouldId ?? null) !== incoming) {
    const wanted = incoming === null ? "no mould" : `mould ${incoming}`;
    faults.push(wrongMould(context, step, `the mould put in is ${sayMould(mouldIn)}`, wanted));
  }
  return faults;
}

/** Stays of copies on one line, the last one open-ended. */
function staysOf(steps: readonly LineStep[], lineId: string): Stay[] {
  const stays: Stay[] = [];
  let hanging: MouldCopy | null = steps[0]?.before.mould ?? null;
  let since = -Infinity;
  for (const step of steps) {
    const swaps = step.kind === "run" && step.swapsFreely;
    if (step.kind === "run" && !swaps) continue;
    const at = step.kind === "run" ? step.heldFrom : step.segment.mountStart;
    const mouldIn = step.kind === "run" ? step.segment.mould : step.segment.mouldIn;
    if (swaps || (step.kind === "change" && step.segment.mouldOut !== null)) {
      if (hanging !== null) stays.push({ mould: hanging, lineId, from: since, to: at });
      hanging = null;
    }
    if (swaps || mouldIn !== null) {
      hanging = mouldIn;
      since = at;
    }
  }
  if (hanging !== null) stays.push({ mould: hanging, lineId, from: since, to: Infinity });
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
  readonly mould: MouldCopy;
  readonly lineId: string;
  readonly orderId: string | null;
  readonly from: number;
  readonly to: number;
}

function mountingOf({ lineId, mouldIn, mountStart, end }: ChangeSegment): Use | null {
  return mouldIn === null ? null : { mould: mouldIn, lineId, orderId: null, from: mountStart, to: end };
}

function lotUseOf({ stretches, lineId, orderId, start, end }: LotOnLine): Use | null {
  const mould = stretches[0]?.mould ?? null;
  return mould === null ? null : { mould, lineId, orderId, from: start, to: end };
}

function outOfServiceFaults(context: AuditContext, use: Use | null): Violation[] {
  const found: Violation[] = [];
  if (use === null) return found;
  const { mould, lineId, orderId, from, to } = use;
  for (const { copy, start, end } of context.moulds.get(mould.mouldId)?.outOfService ?? []) {
    if (copy !== mould.copy || from >= end || to <= start) continue;
    const at = Math.max(from, start);
    const text = `Line ${lineId} uses ${sayMould(mould)} ${sayInstant(context.problem, at)}, in its ${sayDuration(end - start)} out of service.`;
    found.push(finding("mould-copy-out-of-service", { lineId, orderId, at }, text));
  }
  return found;
}

/** Rule 2: every copy on one line at a time, carried between lines, in service, and the one that the plan says hangs there. */
export function mouldCopies(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  const staysOfCopy = new Map<string, Stay[]>();
  for (const [lineId, steps] of context.stepsOfLine) {
    for (const step of steps) {
      if (step.kind === "run") found.push(...runFaults(context, step));
      else {
        found.push(...changeFaults(context, step));
        found.push(...outOfServiceFaults(context, mountingOf(step.segment)));
      }
    }
    for (const stay of steps.length > 0 ? staysOf(steps, lineId) : idleStay(context, lineId)) {
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
  for (const lot of context.lots) found.push(...outOfServiceFaults(context, lotUseOf(lot)));
  return found;
}
