import type { HelpFindings, PlanFigures, Scenario, TriedChange, TurnedOrder } from "@formweek/contracts";

/** Figures side by side, in the order of their rows. In all of them less is better. */
export const figureRows = [
  "lateOrders",
  "lateSeconds",
  "changeSeconds",
  "overtimeSeconds",
  "unplannedOrders",
  "cost",
] as const satisfies readonly (keyof PlanFigures)[];
export type FigureName = (typeof figureRows)[number];

/** What is known of a scenario. */
export type ScenarioState = "not worked out" | "worked out" | "changed since" | "adopted";

export function stateOf({ adopted, outcome }: Pick<Scenario, "adopted" | "outcome">): ScenarioState {
  if (adopted !== null) return "adopted";
  if (outcome === null) return "not worked out";
  return outcome.isCurrent ? "worked out" : "changed since";
}

export type WorkedOut = Scenario & { readonly outcome: NonNullable<Scenario["outcome"]> };

/** A plan that is a column of the comparison. */
export interface ComparedColumn {
  readonly kind: "standing" | "without" | "scenario";
  /** Null: of no scenario. */
  readonly scenario: WorkedOut | null;
  readonly figures: PlanFigures;
  /** What its differences are taken against; null: none are told. */
  readonly against: PlanFigures | null;
}

export interface ComparedCell {
  readonly value: number;
  /** Of the greatest in its row, 0 to 1. */
  readonly share: number;
  /** More than without the changes, less than 0: less; null: it is not compared. */
  readonly by: number | null;
}

export interface Comparison {
  readonly columns: readonly ComparedColumn[];
  readonly rows: readonly { readonly name: FigureName; readonly cells: readonly ComparedCell[] }[];
  /** All were worked out by one run, so that one plan without changes serves them all. */
  readonly isOfOneRun: boolean;
}

/** The standing plan, the plan without changes, then each scenario that has been worked out; null: none has. */
export function comparisonOf(scenarios: readonly Scenario[]): Comparison | null {
  const workedOut = scenarios.filter((scenario): scenario is WorkedOut => scenario.outcome !== null);
  const newest = [...workedOut].sort((a, b) => b.outcome.at.localeCompare(a.outcome.at, "en"))[0]?.outcome;
  if (newest === undefined) return null;
  const { standing, without } = newest;
  const columns: readonly ComparedColumn[] = [
    ...(standing === null
      ? []
      : [{ kind: "standing", scenario: null, figures: standing, against: null } as const]),
    { kind: "without", scenario: null, figures: without, against: null },
    ...workedOut.map(
      (scenario) =>
        ({
          kind: "scenario",
          scenario,
          figures: scenario.outcome.with,
          against: scenario.outcome.without,
        }) as const,
    ),
  ];
  return {
    columns,
    rows: figureRows.map((name) => ({ name, cells: cellsOf(name, columns) })),
    isOfOneRun: workedOut.every(({ outcome }) => outcome.runId === newest.runId),
  };
}

function cellsOf(name: FigureName, columns: readonly ComparedColumn[]): readonly ComparedCell[] {
  const most = Math.max(...columns.map(({ figures }) => figures[name]));
  return columns.map(({ figures, against }) => ({
    value: figures[name],
    share: most > 0 ? Math.max(0, figures[name]) / most : 0,
    by: against === null ? null : figures[name] - against[name],
  }));
}

/** Which way an order has turned. */
export type Turn = "worse" | "better" | "comes" | "goes";

const ranks = { "on time": 0, "covered by stock": 0, late: 1, "partly planned": 2, unplanned: 3 } as const;

export function turnOf({ from, to }: Pick<TurnedOrder, "from" | "to">): Turn {
  if (from === null) return "comes";
  if (to === null) return "goes";
  return ranks[to] > ranks[from] ? "worse" : "better";
}

/** A change that helps, with what it saves and how long its bars are. */
export interface RankedChange {
  readonly tried: TriedChange;
  /** Late and unplanned orders fewer than without; less than 0: more. */
  readonly ordersSaved: number;
  readonly costSaved: number;
  /** Of the most that any change saves, 0 to 1. */
  readonly ordersShare: number;
  readonly costShare: number;
}

/** Changes that help in the order in which they were found, the cheapest plan first. */
export function rankedChanges({ without, changes }: HelpFindings): readonly RankedChange[] {
  const saved = changes.map((tried) => ({
    tried,
    ordersSaved: missed(without) - missed(tried.with),
    costSaved: without.cost - tried.with.cost,
  }));
  const mostOrders = Math.max(0, ...saved.map(({ ordersSaved }) => ordersSaved));
  const mostCost = Math.max(0, ...saved.map(({ costSaved }) => costSaved));
  const shareOf = (value: number, most: number): number => (most > 0 ? Math.max(0, value) / most : 0);
  return saved.map((each) => ({
    ...each,
    ordersShare: shareOf(each.ordersSaved, mostOrders),
    costShare: shareOf(each.costSaved, mostCost),
  }));
}

const missed = ({ lateOrders, unplannedOrders }: PlanFigures): number => lateOrders + unplannedOrders;

/** How long is thought about it. */
export type Thoroughness = "quick" | "thorough";

const secondsPerPlan = { quick: 8, thorough: 30 } as const;
/** Changes that a search for what helps tries, about. */
const usuallyTried = 12;
const secondsPerTrial = { quick: 4, thorough: 15 } as const;

/** Of the run over so many scenarios, with the plan without changes. */
export function scenarioSeconds(count: number, thoroughness: Thoroughness): number {
  return (count + 1) * secondsPerPlan[thoroughness];
}

export function helpSeconds(thoroughness: Thoroughness): number {
  return (usuallyTried + 1) * secondsPerTrial[thoroughness];
}
