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

/** Options of the lot on the line. With `setup` among them that one alone: a mould that fits stays with its lot. */
export function optionsOnLine(
  standing: StandingPlan,
  subject: EditSubject,
  { setup, ...place }: LotOnLine & { readonly setup: number },
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
  const same = there.filter((option) => options.setup[option] === setup);
  return found(same.length > 0 ? same : there);
}
