import {
  isoInstant,
  type ListedScenario,
  type ScenarioChange as Change,
  type TurnedOrder,
} from "@formweek/application";
import type { Scenario, ScenarioChange } from "@formweek/contracts";
import { termsOf, termsOnTheWire } from "./orders.ts";

const secondsOf = (instant: string): number => Date.parse(instant) / 1000;

/** A change as the planner takes it. */
export function changeOf(change: ScenarioChange): Change {
  switch (change.kind) {
    case "another team":
      return { ...change, from: secondsOf(change.from), to: secondsOf(change.to) };
    case "rush order":
      return { ...change, order: termsOf(change.order) };
    case "change order":
      return { ...change, dueAt: change.dueAt === null ? null : secondsOf(change.dueAt) };
    case "close line":
    case "add shift":
    case "more copies":
    case "cancel order":
    case "cycle rate":
      return change;
  }
}

/** A change as the wire has it. */
export function changeOnTheWire(change: Change): ScenarioChange {
  switch (change.kind) {
    case "another team":
      return { ...change, from: isoInstant(change.from), to: isoInstant(change.to) };
    case "rush order":
      return { ...change, order: termsOnTheWire(change.order) };
    case "change order":
      return { ...change, dueAt: change.dueAt === null ? null : isoInstant(change.dueAt) };
    case "add shift": {
      const { breaks, lineIds, teamIds, operators, ...shift } = change.shift;
      const lists = { breaks: [...breaks], lineIds: [...lineIds], teamIds: [...teamIds] };
      return { ...change, shift: { ...shift, ...lists, operators: [...operators] } };
    }
    case "close line":
    case "more copies":
    case "cancel order":
    case "cycle rate":
      return change;
  }
}

/** A scenario without the plan behind its outcome. */
export function scenarioOnTheWire(scenario: ListedScenario): Scenario {
  const { id, revision, name, changes, by, at, adopted, outcome } = scenario;
  return {
    id,
    revision,
    name,
    changes: changes.map(changeOnTheWire),
    by,
    at: isoInstant(at),
    adopted: adopted === null ? null : { by: adopted.by, at: isoInstant(adopted.at) },
    outcome: outcome === null ? null : outcomeOnTheWire(outcome),
  };
}

function outcomeOnTheWire(outcome: NonNullable<ListedScenario["outcome"]>) {
  const { runId, endedAt, isCurrent, standing, without, with: changed, turned } = outcome;
  return {
    runId,
    at: isoInstant(endedAt),
    isCurrent,
    standing,
    without,
    with: changed,
    turned: turned.map((order: TurnedOrder) => ({ ...order })),
  };
}
