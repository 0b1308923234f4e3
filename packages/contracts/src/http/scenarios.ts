import { z } from "zod";
import { OrderState } from "../plan-document.ts";
import { LineClosing, ShiftAdded } from "../plan-edit.ts";
import { ExistingInstant, Id, InstantText, Revision } from "../scalars.ts";
import { OrderTerms } from "./orders.ts";
import { PlanFigures } from "./plan-figures.ts";

/** Changes of one scenario at the most: it is to be read at a glance. */
export const MOST_SCENARIO_CHANGES = 20;

const Spell = {
  from: ExistingInstant,
  to: ExistingInstant.describe("Half-open: gone again from here on"),
};

/** One change of plant or orders that is thought through; nothing is changed by it until its scenario is adopted. */
export const ScenarioChange = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("close line"), closure: LineClosing }).describe("A line stands for a spell"),
    z
      .object({ kind: z.literal("add shift"), shift: ShiftAdded })
      .describe("A shift on a day, with the lines, teams and operators that come"),
    z
      .object({ kind: z.literal("more copies"), mouldId: Id, more: z.int().min(1).max(5) })
      .describe("More identical sets of a mould"),
    z
      .object({ kind: z.literal("another team"), likeTeamId: Id, name: z.string(), ...Spell })
      .describe("One more setter team beside another, for a spell: as many setters as that team has"),
    z.object({ kind: z.literal("cancel order"), orderId: Id }),
    z
      .object({ kind: z.literal("rush order"), order: OrderTerms })
      .describe("An order that is not in the book"),
    z
      .object({
        kind: z.literal("change order"),
        orderId: Id,
        pieces: z.number().nullable().describe("Null: as it is"),
        dueAt: ExistingInstant.nullable().describe("Null: as it is"),
      })
      .describe("Other pieces or another due instant, or both"),
    z
      .object({ kind: z.literal("cycle rate"), lineId: Id, mouldId: Id, cyclesPerMin: z.number() })
      .describe("A mould runs at so many cycles a minute on a line, whatever it makes"),
  ])
  .meta({ id: "ScenarioChange" });
export type ScenarioChange = z.infer<typeof ScenarioChange>;

const ScenarioName = z
  .string()
  .trim()
  .min(1)
  .max(80)
  .refine((text) => !text.includes("\0"), "must be readable text");

/** A scenario as it is written. */
export const ScenarioDraft = z
  .object({ name: ScenarioName, changes: z.array(ScenarioChange).min(1).max(MOST_SCENARIO_CHANGES) })
  .meta({ id: "ScenarioDraft" });
export type ScenarioDraft = z.infer<typeof ScenarioDraft>;

/** An order that ends otherwise than in the plan without the changes. */
export const TurnedOrder = z
  .object({
    orderId: Id,
    from: OrderState.nullable().describe("Null: not in the book without the changes"),
    to: OrderState.nullable().describe("Null: not in the book with them"),
    fromLateSeconds: z.int().nullable().describe("0: in time; null: not planned, or not in the book"),
    toLateSeconds: z.int().nullable().describe("As before, with the changes"),
  })
  .meta({ id: "TurnedOrder" });
export type TurnedOrder = z.infer<typeof TurnedOrder>;

/** What the plan with the changes comes to, beside the plan without. */
export const ScenarioOutcome = z
  .object({
    runId: Id,
    at: InstantText.describe("When it was worked out"),
    isCurrent: z
      .boolean()
      .describe(
        "False: plant, orders, the working plan or the scenario have changed since; work it out again before it is adopted",
      ),
    standing: PlanFigures.nullable().describe("The working plan as it stood; null: there was none"),
    without: PlanFigures.describe("Planned on for as long without the changes: what to hold `with` against"),
    with: PlanFigures,
    turned: z
      .array(TurnedOrder)
      .describe("Orders that change between in time, late and not planned; those that get worse first"),
  })
  .meta({ id: "ScenarioOutcome" });
export type ScenarioOutcome = z.infer<typeof ScenarioOutcome>;

/** A small, named list of changes to plant or orders. */
export const Scenario = z
  .object({
    id: Id,
    revision: Revision,
    name: z.string(),
    changes: z.array(ScenarioChange),
    by: z.string(),
    at: InstantText.describe("Last written"),
    adopted: z
      .object({ by: z.string(), at: InstantText })
      .nullable()
      .describe("Its changes were made in earnest; null: they were not"),
    outcome: ScenarioOutcome.nullable().describe("Null: not worked out yet"),
  })
  .meta({ id: "Scenario" });
export type Scenario = z.infer<typeof Scenario>;

/** Oldest first. */
export const ScenarioListResponse = z.array(Scenario);
export type ScenarioListResponse = z.infer<typeof ScenarioListResponse>;

/** A scenario written anew, or over the revision that was seen. */
export const ScenarioWrite = z
  .object({ ...ScenarioDraft.shape, revision: Revision.describe("Revision of the scenario that was seen") })
  .meta({ id: "ScenarioWrite" });
export type ScenarioWrite = z.infer<typeof ScenarioWrite>;

export const ScenarioQuery = z.object({ revision: z.coerce.number().int().min(0) });

const budget = {
  seconds: z.number().min(0.1).max(3600).optional().describe("Of the whole run"),
  steps: z.int().min(1).max(1_000_000_000).optional().describe("Of each plan"),
  seed: z.int().min(0).max(4_294_967_295).optional().describe("1 when left out"),
  threads: z.int().min(1).max(64).optional().describe("1 when left out"),
};

/** Works out scenarios beside the plan: one plan without their changes, then one for each. */
export const ScenarioSolveRequest = z
  .object({ scenarioIds: z.array(Id).min(1).max(3), ...budget })
  .meta({ id: "ScenarioSolveRequest" });
export type ScenarioSolveRequest = z.infer<typeof ScenarioSolveRequest>;

/** Tries single changes, each really planned, and ranks them. */
export const HelpRequest = z.object(budget).meta({ id: "HelpRequest" });
export type HelpRequest = z.infer<typeof HelpRequest>;

/** Makes the changes of a scenario in earnest, with the plan that was worked out for them. */
export const AdoptRequest = z
  .object({
    revision: Revision.describe("Revision of the working plan that this was decided on"),
    scenarioRevision: Revision.describe("Revision of the scenario that was seen"),
  })
  .meta({ id: "AdoptRequest" });
export type AdoptRequest = z.infer<typeof AdoptRequest>;

/** What a run over scenarios came to; the outcomes stand with the scenarios. */
export const ScenarioFindings = z
  .object({ kind: z.literal("scenarios"), scenarioIds: z.array(Id).describe("Those that were worked out") })
  .meta({ id: "ScenarioFindings" });
export type ScenarioFindings = z.infer<typeof ScenarioFindings>;

/** A single change with what it alone would do. */
export const TriedChange = z
  .object({ change: ScenarioChange, with: PlanFigures, turned: z.array(TurnedOrder) })
  .meta({ id: "TriedChange" });
export type TriedChange = z.infer<typeof TriedChange>;

export const HelpFindings = z
  .object({
    kind: z.literal("help"),
    without: PlanFigures.describe("Planned on for as long without any change"),
    tried: z.int().describe("How many changes were tried"),
    changes: z.array(TriedChange).describe("Those that help, the cheapest plan first"),
  })
  .meta({ id: "HelpFindings" });
export type HelpFindings = z.infer<typeof HelpFindings>;
