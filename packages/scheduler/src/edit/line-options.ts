import { misfitReason } from "../explain/unplanned-words.ts";
import type { StandingPlan } from "./standing-plan.ts";
import { found, refuse, sayLot, type EditSubject, type Found } from "./refusal.ts";

/** A lot that is to run on a line. */
interface LotOnLine {
  readonly job: number;
  readonly lot: number;
  readonly line: number;
}

/** Index of the line that the subject names. */
export function findLine({ lineOf }: StandingPlan, subject: EditSubject): Found<number> {
  const line = lineOf.get(subject.lineId ?? "");
  if (line !== undefined) return found(line);
  return refuse(subject, "line-unknown", {
    text: `There is no line ${subject.lineId ?? ""} in this plant.`,
    remedy: "Choose a line of the plant.",
  });
}

/** Why the order may not be made on the line at all. */
function misfit({ problem }: StandingPlan, subject: EditSubject, { job, line }: LotOnLine): Found<never> {
  const { orderId, options, refusals } = problem.data.jobs[job]!;
  const lineId = problem.data.lines[line]!.id;
  if (options.some((option) => option.lineId === lineId))
    return refuse(subject, "does-not-fit", {
      text: `${sayLot(subject)} would run longer on line ${lineId} than the whole horizon.`,
      remedy: "Choose a faster line, or a later end of the horizon.",
    });
  const reasons = refusals.filter((refusal) => refusal.lineId === lineId).map(misfitReason);
  const texts = new Set(reasons.map(({ text }) => text));
  return refuse(subject, "does-not-fit", {
    text: [`No mould of order ${orderId} may run on line ${lineId}.`, ...texts].join(" "),
    remedy: "Choose a line that the order's moulds fit.",
    reasons,
  });
}

/** How a lot that is moved is to be made. */
interface WantedSetup {
  /** What it is made with now. */
  readonly setup: number;
  /** The mould that is asked for; absent: any. */
  readonly mouldId?: string | null;
}

/** Why the lot may not be made there with the mould. */
function mouldMisfit(
  { problem: { data, options } }: StandingPlan,
  subject: EditSubject,
  {
    job,
    there,
    mouldId,
  }: { readonly job: number; readonly there: readonly number[]; readonly mouldId: string },
): Found<never> {
  const lineId = subject.lineId ?? "";
  const reasons = data.jobs[job]!.refusals.filter(
    (refusal) => refusal.lineId === lineId && refusal.mouldId === mouldId,
  ).map(({ text }) => text);
  const able = new Set(there.map((option) => data.setups[options.setup[option]!]!.mouldId));
  return refuse(subject, "mould-does-not-fit", {
    text: [
      `Mould ${mouldId} does not make order ${subject.orderId} on line ${lineId}.`,
      ...new Set(reasons),
    ].join(" "),
    remedy: `Choose another mould there: ${[...able].join(", ")}.`,
  });
}

/** Options of the lot on the line. With `setup` among them that one alone: a mould that fits stays with its lot. */
export function optionsOnLine(
  standing: StandingPlan,
  subject: EditSubject,
  { setup, mouldId = null, ...place }: LotOnLine & WantedSetup,
): Found<readonly number[]> {
  const { lots, options, data } = standing.problem;
  const lineId = data.lines[place.line]!.id;
  const held = data.pins.find(({ orderId }) => orderId === subject.orderId)?.lineId ?? lineId;
  if (held !== lineId)
    return refuse(subject, "held-on-line", {
      text: `Order ${subject.orderId} is held on line ${held}.`,
      remedy: "Free the order, or leave it on that line.",
      heldLineId: held,
    });
  const there: number[] = [];
  for (let option = lots.firstOption[place.lot]!; option < lots.firstOption[place.lot + 1]!; option++)
    if (options.line[option] === place.line) there.push(option);
  if (there.length === 0) return misfit(standing, subject, place);
  const wanted =
    mouldId === null
      ? there
      : there.filter((option) => data.setups[options.setup[option]!]!.mouldId === mouldId);
  if (mouldId !== null && wanted.length === 0)
    return mouldMisfit(standing, subject, { ...place, there, mouldId });
  const same = wanted.filter((option) => options.setup[option] === setup);
  return found(same.length > 0 ? same : wanted);
}
