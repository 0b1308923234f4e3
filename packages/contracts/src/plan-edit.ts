import { z } from "zod";
import { UnplannedReason } from "./plan-cause.ts";
import { Id } from "./scalars.ts";

const LotNumber = z.int().min(0).max(1_000_000).describe("0-based lot of the order");

/** One lot of a plan. */
export const LotName = z.object({ orderId: Id, lot: LotNumber }).meta({ id: "LotName" });
export type LotName = z.infer<typeof LotName>;

const NewPlace = {
  lineId: Id.describe("Line on which the lot is to run"),
  before: LotName.nullable().describe("Lot that comes right after it on that line; null: it is the last"),
};

/** One change of a plan by hand. Everything but the lots it names keeps its line and its turn on the line. */
export const PlanEdit = z
  .discriminatedUnion("kind", [
    z
      .object({
        kind: z.literal("move"),
        orderId: Id,
        lot: LotNumber,
        ...NewPlace,
        mouldId: Id.exactOptional().describe(
          "Mould that is to make it; absent: the one that makes it now where the line allows it",
        ),
      })
      .describe("Another line, or another turn on its line, for one lot"),
    z
      .object({ kind: z.literal("take out"), orderId: Id })
      .describe("The order leaves the plan until it is put back"),
    z
      .object({ kind: z.literal("put back"), orderId: Id })
      .describe("An order that is not planned goes where it costs least"),
    z
      .object({
        kind: z.literal("split"),
        orderId: Id,
        lot: LotNumber,
        pieces: z.int().min(1).describe("Pieces that leave the lot and become a lot of their own"),
        ...NewPlace,
      })
      .describe("A part of a lot becomes a lot of its own"),
    z.object({ kind: z.literal("join"), orderId: Id }).describe("All lots of the order become its first lot"),
  ])
  .meta({ id: "PlanEdit" });
export type PlanEdit = z.infer<typeof PlanEdit>;

const LocalMinute = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d$/, "must be YYYY-MM-DDTHH:MM")
  .describe("Day and time by the plant's clock, such as 2026-12-05T06:00");
const LocalDay = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, "must be YYYY-MM-DD")
  .describe("Day by the plant's calendar, such as 2026-12-05");
const ClockTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "must be HH:MM, 00:00 to 23:59");
const Label = z
  .string()
  .trim()
  .min(1)
  .max(120)
  .refine((text) => !text.includes("\0"), "must be readable text");

/** A spell in which one line stands. */
export const LineClosing = z
  .object({
    lineId: Id,
    from: LocalMinute,
    to: LocalMinute.describe("Half-open: the line works again from here on"),
    reason: Label,
  })
  .meta({ id: "LineClosing" });
export type LineClosing = z.infer<typeof LineClosing>;

/** A shift worked once, by the lines and people that it names, on top of their calendars. */
export const ShiftAdded = z
  .object({
    date: LocalDay,
    name: Label,
    start: ClockTime,
    end: ClockTime.describe("Before the start: on the next day"),
    breaks: z.array(z.object({ start: ClockTime, end: ClockTime })).max(6),
    lineIds: z.array(Id).max(200).describe("Lines that work it"),
    teamIds: z.array(Id).max(200).describe("Setter teams that come"),
    operators: z
      .array(
        z.object({
          poolId: Id,
          heads: z
            .number()
            .positive()
            .max(500)
            .multipleOf(0.05)
            .describe("On top of those whose calendars are open then"),
        }),
      )
      .max(50)
      .describe("Operators that come"),
  })
  .meta({ id: "ShiftAdded" });
export type ShiftAdded = z.infer<typeof ShiftAdded>;

/** One change of the plant's hours by hand; the working plan is timed again under the new hours. */
export const HoursEdit = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("close line"), closure: LineClosing }).describe("A line stands for a spell"),
    z
      .object({ kind: z.literal("open line"), closure: LineClosing })
      .describe("The spell, named just as it stands, is taken away"),
    z.object({ kind: z.literal("add shift"), shift: ShiftAdded }).describe("A shift on a day"),
    z
      .object({ kind: z.literal("take shift back"), shift: ShiftAdded })
      .describe("The shift, named just as it stands, is taken away"),
  ])
  .meta({ id: "HoursEdit" });
export type HoursEdit = z.infer<typeof HoursEdit>;

/** A plan was chosen that a run had found beside others. */
export const PlanChoice = z
  .object({
    kind: z.literal("choose"),
    runId: Id,
    place: z.int().min(0).describe("Place among the run's findings, from 0"),
    orderId: Id.nullable().describe("The late order that it was to help; null where there was none"),
  })
  .meta({ id: "PlanChoice" });
export type PlanChoice = z.infer<typeof PlanChoice>;

/** Capacity was held for a customer, given back, or became an order; orders by what they are called in the plan before it. */
export const HoldChange = z
  .discriminatedUnion("kind", [
    z
      .object({ kind: z.literal("hold"), orderId: Id, customer: z.string() })
      .describe("Its run came into the plan"),
    z
      .object({
        kind: z.literal("end holds"),
        orderIds: z.array(Id),
        state: z.enum(["released", "expired"]),
      })
      .describe("Their runs left the plan"),
    z
      .object({ kind: z.literal("order hold"), orderId: Id, orderNumber: Id })
      .describe("Its run goes by the order's number now"),
  ])
  .meta({ id: "HoldChange" });
export type HoldChange = z.infer<typeof HoldChange>;

/** The changes of a scenario were made in plant and book, and the plan for them is worked on. */
export const ScenarioAdoption = z
  .object({ kind: z.literal("adopt"), scenarioId: Id, name: z.string().describe("Of the scenario") })
  .meta({ id: "ScenarioAdoption" });
export type ScenarioAdoption = z.infer<typeof ScenarioAdoption>;

/** What a person did between two plans: to the plan, to the hours in which it runs, a choice of another, a hold, or a scenario. */
export const HandEdit = z
  .discriminatedUnion("kind", [
    ...PlanEdit.options,
    ...HoursEdit.options,
    PlanChoice,
    ...HoldChange.options,
    ScenarioAdoption,
  ])
  .meta({ id: "HandEdit" });
export type HandEdit = z.infer<typeof HandEdit>;

/** Which rule of the plan stands against a change by hand. */
export const EditRefusal = z
  .object({
    code: z.enum([
      "order-unknown",
      "lot-unknown",
      "line-unknown",
      "place-unknown",
      "does-not-fit",
      "mould-does-not-fit",
      "held-on-line",
      "held-at-start",
      "held-in-sequence",
      "planned-already",
      "not-planned",
      "may-not-be-split",
      "too-many-lots",
      "too-few-pieces",
      "breaks-packing",
      "not-split",
      "no-room",
      "crowds-out",
    ]),
    orderId: Id.describe("The order that was to be changed"),
    lot: LotNumber.nullable(),
    lineId: Id.nullable(),
    otherOrderId: Id.nullable().describe("Another order that stands against it"),
    text: z.string(),
    remedy: z.string(),
    reasons: z
      .array(UnplannedReason)
      .readonly()
      .exactOptional()
      .describe("What stands behind it in the plan"),
    heldLineId: Id.exactOptional().describe("Line on which the order is held"),
    leastPieces: z.int().exactOptional().describe("Pieces that a lot needs at least"),
    unitPieces: z.int().exactOptional().describe("Pieces that are packed together"),
  })
  .meta({ id: "EditRefusal" });
export type EditRefusal = z.infer<typeof EditRefusal>;
