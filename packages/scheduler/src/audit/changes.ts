import { addWorking, isOpen } from "@formweek/capacity-model";
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

type Report = (code: AuditCode, text: string) => Violation;

function reporter(segment: ChangeSegment | RunSegment): Report {
  const orderId = segment.kind === "run" ? segment.orderId : null;
  return (code, text) => finding(code, { lineId: segment.lineId, orderId, at: segment.start }, text);
}

function saySetup(setupId: string | null): string {
  return setupId === null ? "an unknown set-up" : `set-up ${setupId}`;
}

/** The three phases follow one another in the hours of those who do them, each exactly as long as it must be. */
function phaseFaults(context: AuditContext, { line, segment, spec }: RuledChange): Violation[] {
  const report = reporter(segment);
  const teamSeconds = spec.dismountSeconds + spec.mountSeconds;
  const team = context.problem.teams.find((entry) => entry.id === segment.teamId);
  if (teamSeconds > 0 && team === undefined) return [];
  const first = teamSeconds > 0 && team !== undefined ? team.workingTime : line.workingTime;
  const faults: Violation[] = [];
  if (teamSeconds + spec.tailSeconds > 0 && !isOpen(first, segment.start)) {
    const who = teamSeconds > 0 ? `team ${segment.teamId}` : `line ${line.id}`;
    const text = `The change on line ${line.id} starts ${sayInstant(context.problem, segment.start)}, outside the hours of ${who}.`;
    faults.push(report("change-outside-hours", text));
  }
  const phases = [
    ["taking out", first, segment.start, spec.dismountSeconds, segment.mountStart],
    ["mounting", first, segment.mountStart, spec.mountSeconds, segment.tailStart],
    ["heating and checking", line.workingTime, segment.tailStart, spec.tailSeconds, segment.end],
  ] as const;
  for (const [phase, hours, start, seconds, end] of phases) {
    const due = addWorking(hours, start, seconds);
    if (due === end) continue;
    const ends = `In the change on line ${line.id} ${phase} (${sayDuration(seconds)} of work) ends ${sayInstant(context.problem, end)}`;
    faults.push(
      due === null
        ? report("change-outside-hours", `${ends}; the working hours run out before it can be done.`)
        : report(
            "wrong-change-time",
            `${ends}; begun ${sayInstant(context.problem, start)} it ends ${sayDuration(Math.abs(due - end))} ${due > end ? "later" : "earlier"}.`,
          ),
    );
  }
  return faults;
}

function helperFaults({ line, segment, spec }: RuledChange): Violation[] {
  const report = reporter(segment);
  const needsTeam = spec.dismountSeconds + spec.mountSeconds > 0;
  const faults: Violation[] = [];
  if (needsTeam !== (segment.teamId !== null)) {
    const work = sayDuration(spec.dismountSeconds + spec.mountSeconds);
    faults.push(
      report(
        "wrong-team",
        `The change on line ${line.id} has ${work} of team work and ${segment.teamId === null ? "no team" : `team ${segment.teamId}`}.`,
      ),
    );
  }
  const trolleyId = needsTeam && spec.usesTrolley ? line.trolleyId : null;
  if (trolleyId !== segment.trolleyId) {
    faults.push(
      report(
        "wrong-trolley",
        `The change on line ${line.id} uses ${segment.trolleyId ?? "no trolley"}; it should use ${trolleyId ?? "none"}.`,
      ),
    );
  }
  return faults;
}

function strippingFaults(context: AuditContext, segment: ChangeSegment, servesRun: boolean): Violation[] {
  const report = reporter(segment);
  if (!segment.stripping) {
    return servesRun
      ? []
      : [
          report(
            "idle-change",
            `The change on line ${segment.lineId} to ${saySetup(segment.toSetupId)} is not followed by a run.`,
          ),
        ];
  }
  const from = context.setups.get(segment.fromSetupId ?? "");
  if (from !== undefined && from.mouldId !== null && from.strippedId === segment.toSetupId) return [];
  const text = `Line ${segment.lineId} is said to be stripped from ${saySetup(segment.fromSetupId)} to ${saySetup(segment.toSetupId)}, which is not that set-up without its mould.`;
  return [report("wrong-stripping", text)];
}

function changeFaults(
  context: AuditContext,
  line: ProblemLine,
  step: LineStep & { readonly kind: "change" },
): Violation[] {
  const { segment, before, servesRun } = step;
  const report = reporter(segment);
  const faults = strippingFaults(context, segment, servesRun);
  if (segment.fromSetupId !== before.setupId) {
    const text = `The change on line ${line.id} starts from ${saySetup(segment.fromSetupId)}, but ${saySetup(before.setupId)} stands there.`;
    faults.push(report("change-from-wrong-setup", text));
  }
  const index = context.changeIndexOf(line, before.setupId, segment.toSetupId);
  const spec = index === null ? null : context.changeSpecOf(index);
  if (index === null || spec === null) {
    const text = `Line ${line.id} needs no change from ${saySetup(before.setupId)} to ${saySetup(segment.toSetupId)}.`;
    return [...faults, report("change-not-needed", text)];
  }
  if (index !== segment.changeSpec) {
    const text = `The change on line ${line.id} from ${saySetup(before.setupId)} to ${saySetup(segment.toSetupId)} is said to be change ${segment.changeSpec}; the rules give change ${index}.`;
    faults.push(report("wrong-change", text));
  }
  const change = { line, segment, spec };
  return [...faults, ...helperFaults(change), ...phaseFaults(context, change)];
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
  return [reporter(segment)("change-missing", text)];
}

/** Rule 3: the right change wherever the set-up differs, in the hours of those who do it, and none where it does not. */
export function changes(context: AuditContext): Violation[] {
  return context.problem.lines.flatMap((line) =>
    (context.stepsOfLine.get(line.id) ?? []).flatMap((step) =>
      step.kind === "change" ? changeFaults(context, line, step) : missingChange(context, line, step),
    ),
  );
}
