import { addWorking, isOpen, type WorkingTime } from "@formweek/capacity-model";
import type { ChangeSegment, RunSegment } from "../plan/plan.ts";
import type { ChangeSpec, ProblemLine } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import type { AuditContext } from "./audit-context.ts";
import type { AuditCode } from "./audit-code.ts";
import { finding } from "./finding.ts";
import type { LineStep } from "./line-history.ts";
import { sayDuration, sayInstant } from "./wording.ts";

/** A change with the line it stands on and the durations that the rules give it. */
interface RuledChange {
  readonly line: ProblemLine;
  readonly segment: ChangeSegment;
  readonly spec: ChangeSpec;
}

function report(segment: ChangeSegment | RunSegment, code: AuditCode, text: string): Violation {
  const orderId = segment.kind === "run" ? segment.orderId : null;
  return finding(code, { lineId: segment.lineId, orderId, at: segment.start }, text);
}

function saySetup(setupId: string | null): string {
  return setupId === null ? "an unknown set-up" : `set-up ${setupId}`;
}

/** One phase of a change: its work and when the plan has it. */
interface Phase {
  readonly name: string;
  readonly hours: WorkingTime;
  readonly start: number;
  readonly seconds: number;
  readonly end: number;
}

/** A phase ends when its work is done, in the hours of those who do it. */
function phaseFaults({ problem }: AuditContext, segment: ChangeSegment, phase: Phase): Violation[] {
  const { name, hours, start, seconds, end } = phase;
  const due = addWorking(hours, start, seconds);
  if (due === end) return [];
  const ends = `In the change on line ${segment.lineId} ${name} (${sayDuration(seconds)} of work) ends ${sayInstant(problem, end)}`;
  if (due === null) {
    const text = `${ends}; the working hours run out before it can be done.`;
    return [report(segment, "change-outside-hours", text)];
  }
  const text = `${ends}; begun ${sayInstant(problem, start)} it ends ${sayDuration(Math.abs(due - end))} ${due > end ? "later" : "earlier"}.`;
  return [report(segment, "wrong-change-time", text)];
}

/** The three phases follow one another in the hours of those who do them, each exactly as long as it must be. */
function timeFaults(context: AuditContext, { line, segment, spec }: RuledChange): Violation[] {
  const { start, mountStart, tailStart, end } = segment;
  const { dismountSeconds, mountSeconds, tailSeconds } = spec;
  const teamSeconds = dismountSeconds + mountSeconds;
  const team = context.teams.get(segment.teamId ?? "");
  if (teamSeconds > 0 && team === undefined) return [];
  const first = teamSeconds > 0 && team !== undefined ? team.workingTime : line.workingTime;
  const faults: Violation[] = [];
  if (teamSeconds + tailSeconds > 0 && !isOpen(first, start)) {
    const who = teamSeconds > 0 ? `team ${segment.teamId}` : `line ${line.id}`;
    const text = `The change on line ${line.id} starts ${sayInstant(context.problem, start)}, outside the hours of ${who}.`;
    faults.push(report(segment, "change-outside-hours", text));
  }
  const out = { name: "taking out", hours: first, start, seconds: dismountSeconds, end: mountStart };
  const mounting = {
    name: "mounting",
    hours: first,
    start: mountStart,
    seconds: mountSeconds,
    end: tailStart,
  };
  const tail = {
    name: "heating and checking",
    hours: line.workingTime,
    start: tailStart,
    seconds: tailSeconds,
    end,
  };
  for (const phase of [out, mounting, tail]) faults.push(...phaseFaults(context, segment, phase));
  return faults;
}

function helperFaults({ line, segment, spec }: RuledChange): Violation[] {
  const needsTeam = spec.dismountSeconds + spec.mountSeconds > 0;
  const faults: Violation[] = [];
  if (needsTeam !== (segment.teamId !== null)) {
    const work = sayDuration(spec.dismountSeconds + spec.mountSeconds);
    faults.push(
      report(
        segment,
        "wrong-team",
        `The change on line ${line.id} has ${work} of team work and ${segment.teamId === null ? "no team" : `team ${segment.teamId}`}.`,
      ),
    );
  }
  const trolleyId = needsTeam && spec.usesTrolley ? line.trolleyId : null;
  if (trolleyId !== segment.trolleyId) {
    faults.push(
      report(
        segment,
        "wrong-trolley",
        `The change on line ${line.id} uses ${segment.trolleyId ?? "no trolley"}; it should use ${trolleyId ?? "none"}.`,
      ),
    );
  }
  return faults;
}

function strippingFaults(context: AuditContext, segment: ChangeSegment, servesRun: boolean): Violation[] {
  if (!segment.stripping) {
    return servesRun
      ? []
      : [
          report(
            segment,
            "idle-change",
            `The change on line ${segment.lineId} to ${saySetup(segment.toSetupId)} is not followed by a run.`,
          ),
        ];
  }
  const from = context.setups.get(segment.fromSetupId ?? "");
  if (from !== undefined && from.mouldId !== null && from.strippedId === segment.toSetupId) return [];
  const text = `Line ${segment.lineId} is said to be stripped from ${saySetup(segment.fromSetupId)} to ${saySetup(segment.toSetupId)}, which is not that set-up without its mould.`;
  return [report(segment, "wrong-stripping", text)];
}

function changeFaults(
  context: AuditContext,
  line: ProblemLine,
  step: LineStep & { readonly kind: "change" },
): Violation[] {
  const { segment, before, servesRun } = step;
  const faults = strippingFaults(context, segment, servesRun);
  if (segment.fromSetupId !== before.setupId) {
    const text = `The change on line ${line.id} starts from ${saySetup(segment.fromSetupId)}, but ${saySetup(before.setupId)} stands there.`;
    faults.push(report(segment, "change-from-wrong-setup", text));
  }
  const index = context.changeIndexOf(line, before.setupId, segment.toSetupId);
  const spec = index === null ? null : context.changeSpecOf(index);
  if (index === null || spec === null) {
    const text = `Line ${line.id} needs no change from ${saySetup(before.setupId)} to ${saySetup(segment.toSetupId)}.`;
    return [...faults, report(segment, "change-not-needed", text)];
  }
  if (index !== segment.changeSpec) {
    const text = `The change on line ${line.id} from ${saySetup(before.setupId)} to ${saySetup(segment.toSetupId)} is said to be change ${segment.changeSpec}; the rules give change ${index}.`;
    faults.push(report(segment, "wrong-change", text));
  }
  const change = { line, segment, spec };
  return [...faults, ...helperFaults(change), ...timeFaults(context, change)];
}

/** Between two runs in different set-ups of one line there is a change, even one of no length. */
function missingChange(
  context: AuditContext,
  line: ProblemLine,
  step: LineStep & { readonly kind: "run" },
): Violation[] {
  const { segment, before } = step;
  if (before.setupId === null || before.setupId === segment.setupId) return [];
  const index = context.changeIndexOf(line, before.setupId, segment.setupId);
  if (index === null) return [];
  const spec = context.changeSpecOf(index);
  const work = spec === null ? 0 : spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds;
  const text = `Line ${line.id} runs order ${segment.orderId} in set-up ${segment.setupId} while set-up ${before.setupId} stands there; a change of ${sayDuration(work)} is missing.`;
  return [report(segment, "change-missing", text)];
}

/** Rule 3: the right change wherever the set-up differs, in the hours of those who do it, and none where it does not. */
export function changes(context: AuditContext): Violation[] {
  const found: Violation[] = [];
  for (const line of context.problem.lines) {
    for (const step of context.stepsOfLine.get(line.id) ?? []) {
      if (step.kind === "change") found.push(...changeFaults(context, line, step));
      else found.push(...missingChange(context, line, step));
    }
  }
  return found;
}
