import { resume } from "../construct/resume.ts";
import type { Plan } from "../plan/plan.ts";
import { NEVER } from "../problem/calendar.ts";
import { compile } from "../problem/compile.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { validate } from "../problem/validate.ts";
import { Decoder } from "../timing/decoder.ts";
import { insertOption, isSamePlan } from "../timing/sequences.ts";
import { finish } from "../work/work.ts";
import { cheapestPlace } from "./cheapest-place.ts";
import type { Draft } from "./draft.ts";
import { joinLots } from "./join-lots.ts";
import { moveLot } from "./move-lot.ts";
import { noRoom } from "./no-room.ts";
import type { EditResult, OpenedEdits, PlanEdit } from "./plan-edit.ts";
import { putBack } from "./put-back.ts";
import { found, type Found } from "./refusal.ts";
import { splitLot } from "./split-lot.ts";
import { planTimed, takenOutOf, type StandingPlan } from "./standing-plan.ts";
import { takeOut } from "./take-out.ts";
import { leftOut, timeTrial } from "./timed-trial.ts";

/** Decoders of one problem, used again for every edit. */
interface Decoders {
  /** For trials. */
  readonly quick: Decoder;
  /** Keeps what plans are written from. */
  readonly full: Decoder;
}

function draftOf(standing: StandingPlan, edit: PlanEdit): Found<Draft> {
  switch (edit.kind) {
    case "move":
      return moveLot(standing, edit);
    case "take out":
      return takeOut(standing, edit.orderId);
    case "put back":
      return putBack(standing, edit.orderId);
    case "split":
      return splitLot(standing, edit);
    case "join":
      return joinLots(standing, edit.orderId);
  }
}

/** The plan of a draft, its lot at the best of the places that it may have. */
function planOf(standing: StandingPlan, { quick, full }: Decoders, draft: Draft): EditResult {
  const { problem } = standing;
  const { subject, sequences, placed, takenOut } = draft;
  if (placed !== null) {
    // with no room at any place the first one tells why
    const [first] = placed.places;
    const best = placed.places.length === 1 ? first! : (cheapestPlace(quick, sequences, placed) ?? first!);
    insertOption(sequences, problem.options.line[best.option]!, best.position, best.option);
  }
  if (isSamePlan(problem, sequences, standing.sequences)) return found(standing.plan);
  timeTrial(standing, full, sequences);
  const without = leftOut(full, sequences);
  if (without.length > 0) return noRoom(full, subject, without);
  return found(planTimed(full, takenOut));
}

/** The plan under its problem, which may have changed since: what cannot run as it did is left out, or whole again. */
function adapted(full: Decoder, given: Plan, takenOut: ReadonlySet<string>): Plan {
  let plan = given;
  for (;;) {
    const sequences = finish(resume(full, plan));
    plan = planTimed(full, takenOut);
    // an order that found no room may still have held others up
    if (leftOut(full, sequences).length === 0) return plan;
  }
}

function stand(full: Decoder, given: Plan): StandingPlan {
  const { problem } = full;
  const { data } = problem;
  const takenOut = takenOutOf(given);
  const plan = adapted(full, given, takenOut);
  // lots get the numbers that the plan gives them
  const sequences = finish(resume(full, plan));
  return {
    problem,
    sequences,
    start: full.start.map((start, lot) => (full.option[lot]! < 0 ? NEVER : start)),
    plan,
    takenOut,
    jobOf: new Map(data.jobs.map(({ orderId }, job) => [orderId, job])),
    lineOf: new Map(data.lines.map(({ id }, line) => [id, line])),
  };
}

/**
 * Makes a plan ready to be worked by hand: the problem is compiled once, and every edit is tried on the standing plan by timing
 * its changed sequences under all rules. O(decode) an edit; "put back" times some dozens of places.
 */
export function openEdits(data: ProblemData, plan: Plan): OpenedEdits {
  const faults = validate(data);
  if (faults.length > 0) return { ok: false, error: faults };
  const problem = compile(data);
  const decoders = { quick: new Decoder(problem, false), full: new Decoder(problem, true) };
  const standing = stand(decoders.full, plan);
  const apply = (edit: PlanEdit): EditResult => {
    const draft = draftOf(standing, edit);
    return draft.ok ? planOf(standing, decoders, draft.value) : draft;
  };
  return { ok: true, value: { plan: standing.plan, apply } };
}
