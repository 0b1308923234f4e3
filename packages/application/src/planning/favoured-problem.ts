import { favour, holdToPublished, type Plan, type ProblemData } from "@formweek/scheduler";
import type { Concern } from "../ports/run-repository.ts";

/** What the engine calls each concern. */
const CRITERION = {
  lateness: "lateness",
  changes: "changes",
  overtime: "labour",
  calm: "stability",
} as const;

/**
 * A problem with a price on what moves from the plan that is worked on, which no plant's record has: an order on another line
 * counts as an hour of a line's change, a start moved by ten hours too.
 */
export function heldProblem(problem: ProblemData, working: Plan): ProblemData {
  const { changePerMachineHour } = problem.objective;
  return holdToPublished(problem, working, {
    frozenUntil: problem.horizon.start,
    movedLinePerOrder: changePerMachineHour,
    movedStartPerHour: changePerMachineHour / 10,
  });
}

/**
 * The problem at prices under which a concern counts for more than its price in the plant. Overtime that the plant has no
 * price for then costs what an hour of setters does. `working`: the plan that calm is measured by; null: there is none.
 */
export function favouredProblem(problem: ProblemData, concern: Concern, working: Plan | null): ProblemData {
  const held = concern === "calm" && working !== null ? heldProblem(problem, working) : problem;
  const { overtimePerHour, changePerTeamHour } = held.objective;
  const priced =
    concern === "overtime" && overtimePerHour === 0
      ? { ...held.objective, overtimePerHour: changePerTeamHour }
      : held.objective;
  return { ...held, objective: favour(priced, CRITERION[concern]) };
}
