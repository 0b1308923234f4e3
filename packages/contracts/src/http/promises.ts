import { z } from "zod";
import { UnplannedCause } from "../plan-cause.ts";
import { MouldCopy } from "../plan-document.ts";
import { ShiftAdded } from "../plan-edit.ts";
import { ExistingInstant, Id, InstantText, Pieces, Revision } from "../scalars.ts";

const Seconds = z.int().min(0);

/**
 * What a customer asks for. Ranges are the plant's to check: what is out of them is answered field by field (`product`, `pieces`,
 * `wanted`).
 *
 * @example { "product": "tub 500 white", "pieces": 40000, "wanted": "2026-12-04", "partsAllowed": true }
 * @example { "product": "C75-60-090 white", "pieces": 185000, "wanted": null, "partsAllowed": false }
 */
export const PromiseEnquiry = z
  .object({
    product: z.string().max(200).describe("Id or name of a product as customers write it"),
    pieces: z.number().describe("Whole pieces, 1 to 1,000,000,000"),
    wanted: z
      .string()
      .max(40)
      .nullable()
      .describe(
        "Day, or day and time, by the plant's clock, such as 2026-12-04 or 2026-12-04T06:00; a day means its end. null: as soon as can be",
      ),
    partsAllowed: z.boolean().describe("May be delivered in parts"),
  })
  .meta({ id: "PromiseEnquiry" });
export type PromiseEnquiry = z.infer<typeof PromiseEnquiry>;

/** The enquiry as it was understood. */
export const UnderstoodEnquiry = z
  .object({
    productId: Id,
    productName: z.string(),
    pieces: Pieces,
    wantedAt: InstantText.nullable().describe("By when the goods are wanted, ready for dispatch"),
    partsAllowed: z.boolean(),
  })
  .meta({ id: "UnderstoodEnquiry" });
export type UnderstoodEnquiry = z.infer<typeof UnderstoodEnquiry>;

/** What the answer stands on: the working plan, timed again for plant, orders and holds as they are now. */
export const PromiseBase = z
  .object({
    planId: Id,
    revision: Revision.describe("Revision of the working plan"),
    sameInputs: z
      .boolean()
      .describe("Plant, orders, pins and holds are what they were when the plan was made"),
    from: InstantText.describe("Nothing is offered before it: now, or the plan's start"),
    until: InstantText.describe("End of the plan's horizon: nothing is offered behind it"),
    unplannedOrders: z
      .int()
      .describe("Orders of the book that need hours and have none in the plan: they are not looked after"),
    unplannedHolds: z
      .array(Id)
      .describe(
        "Order ids of holds that need hours and have none in the plan: nothing can be held before it is planned anew",
      ),
  })
  .meta({ id: "PromiseBase" });
export type PromiseBase = z.infer<typeof PromiseBase>;

/** How pieces ordered become pieces to form, step by step; only steps that change something. */
export const QuantityStep = z
  .discriminatedUnion("kind", [
    z.object({
      kind: z.literal("stock"),
      pieces: Pieces.describe("Taken from stock that no other order has"),
    }),
    z.object({ kind: z.literal("least run"), pieces: Pieces.describe("Least run of the product") }),
    z.object({
      kind: z.literal("whole units"),
      unit: z.enum(["piece", "stack", "carton", "pallet"]),
      unitPieces: Pieces,
      units: z.int(),
    }),
    z.object({ kind: z.literal("scrap"), share: z.number(), pieces: Pieces.describe("To form in all") }),
  ])
  .meta({ id: "QuantityStep" });
export type QuantityStep = z.infer<typeof QuantityStep>;

export const PromiseQuantity = z
  .object({
    fromStockPieces: Pieces,
    toMakePieces: Pieces.describe("Good pieces to make, in whole packs; 0: all from stock"),
    grossPieces: Pieces.describe("To form for them, scrap allowance included"),
    steps: z.array(QuantityStep),
  })
  .meta({ id: "PromiseQuantity" });
export type PromiseQuantity = z.infer<typeof PromiseQuantity>;

/** Where the spread of computed rates is known from. */
export const MarginBasis = z
  .discriminatedUnion("kind", [
    z
      .object({ kind: z.literal("plant"), rates: z.int().describe("Proven rates that were compared") })
      .describe("Spread of computed against proven rates of this plant"),
    z
      .object({ kind: z.literal("rule") })
      .describe("Too few proven rates in this plant: a fixed share, common practice"),
  ])
  .meta({ id: "MarginBasis" });
export type MarginBasis = z.infer<typeof MarginBasis>;

/** Rate at which a part would run. */
export const PromisedRate = z
  .object({
    cyclesPerMin: z.number(),
    piecesPerHour: z.number().describe("Good pieces"),
    basis: z
      .discriminatedUnion("kind", [
        z
          .object({ kind: z.literal("proven"), reports: z.int() })
          .describe("Measured on the shop floor: no margin is added"),
        z
          .object({
            kind: z.literal("computed"),
            spreadShare: z
              .number()
              .describe("Standard deviation of true over computed running time, as a share"),
            marginShare: z
              .number()
              .describe("Share of the running time that is added: what 19 of 20 such runs stay within"),
            from: MarginBasis,
          })
          .describe("By the cycle model, never proven on this line: a margin is added"),
      ])
      .describe("What the rate rests on"),
  })
  .meta({ id: "PromisedRate" });
export type PromisedRate = z.infer<typeof PromisedRate>;

/** The change of a line for a part. */
export const PromisedChange = z
  .object({
    start: InstantText,
    end: InstantText,
    minutes: z.number().describe("Work; the span is longer where setters pause"),
    teamId: Id.nullable(),
    teamName: z.string().nullable(),
    mouldIn: MouldCopy.nullable(),
    mouldOut: MouldCopy.nullable(),
  })
  .meta({ id: "PromisedChange" });
export type PromisedChange = z.infer<typeof PromisedChange>;

/** One run of the enquiry: a whole order has one. */
export const PromisedPart = z
  .object({
    pieces: Pieces.describe("To form"),
    goodPieces: Pieces.describe("Of these good, whole packs"),
    lineId: Id,
    lineName: z.string(),
    mould: MouldCopy.nullable(),
    mouldName: z.string(),
    sheetId: Id,
    sheetName: z.string(),
    start: InstantText,
    end: InstantText,
    finish: InstantText.describe("End plus conditioning, by the rate as it is"),
    promised: InstantText.describe("The same with the margin of a computed rate: what the customer is told"),
    shift: z.string().nullable().describe("Name of the line's shift in which it starts"),
    rate: PromisedRate,
    change: PromisedChange.nullable().describe("null: the line is set up for it already"),
  })
  .meta({ id: "PromisedPart" });
export type PromisedPart = z.infer<typeof PromisedPart>;

/** Another run that starts or ends at another time for it. */
export const MovedForPromise = z
  .object({
    orderId: Id,
    lot: z.int().min(0),
    lineId: Id,
    startBefore: InstantText,
    start: InstantText,
    endBefore: InstantText,
    end: InstantText,
  })
  .meta({ id: "MovedForPromise" });
export type MovedForPromise = z.infer<typeof MovedForPromise>;

/** An order that would be later than promised: only in an offer of kind "displacing". */
export const DisplacedOrder = z
  .object({
    orderId: Id,
    customer: z.string(),
    kind: z.enum(["firm", "forecast"]),
    weight: z.number(),
    by: InstantText.describe("By when it had to be finished"),
    finishBefore: InstantText,
    finish: InstantText,
  })
  .meta({ id: "DisplacedOrder" });
export type DisplacedOrder = z.infer<typeof DisplacedOrder>;

/** What an offer adds to the plan's cost, at the plant's prices and in its currency. */
export const PromisePrice = z
  .object({
    cost: z.number().describe("Sum of the terms"),
    terms: z
      .array(z.object({ name: z.string(), unit: z.string(), amount: z.number(), cost: z.number() }))
      .describe("Those that are not nothing, named as in a plan's objective; negative: saved"),
    changeMinutes: z.number().describe("Minutes more that lines stand in changes"),
    overtimeMinutes: z.number().describe("Minutes more worked in extra shifts"),
  })
  .meta({ id: "PromisePrice" });
export type PromisePrice = z.infer<typeof PromisePrice>;

export const OfferKind = z
  .enum(["whole", "split", "first part", "extra shift", "displacing"])
  .meta({ id: "OfferKind" });
export type OfferKind = z.infer<typeof OfferKind>;

/** One way to make the order. `promised` is what the customer is told. */
export const Offer = z
  .object({
    kind: OfferKind.describe(
      "whole: one run, nobody else later than promised; split: two lines at once; first part: what can be ready by the wanted day, the rest after it; extra shift: with hours that a planner adds first; displacing: others become later",
    ),
    finish: InstantText.describe("Of the last part, by the rates as they are"),
    promised: InstantText.describe("Of the last part with the margin of computed rates"),
    slackSeconds: z
      .int()
      .nullable()
      .describe("Wanted minus promised, negative when late; null where no day was wanted"),
    parts: z.array(PromisedPart).min(1).describe("By start"),
    moved: z
      .array(MovedForPromise)
      .describe("Other runs that move, all of them still in time unless displaced"),
    displaced: z.array(DisplacedOrder),
    price: PromisePrice,
    shift: ShiftAdded.nullable().describe("The shift that must be added first; null: none"),
    holdable: z
      .boolean()
      .describe(
        "May be held by the one who asked; false: a planner decides first, and parts are held one by one, each as an order of its own",
      ),
  })
  .meta({ id: "Offer" });
export type Offer = z.infer<typeof Offer>;

/** What stands against a promise, apart from words. */
export const PromiseCause = z
  .union([
    UnplannedCause,
    z.object({
      kind: z.literal("delays another"),
      orderId: Id.describe("An order that would miss its promise"),
      bySeconds: Seconds.nullable().describe("null: it would find no place at all"),
    }),
  ])
  .meta({ id: "PromiseCause" });
export type PromiseCause = z.infer<typeof PromiseCause>;

/** One reason why there is no place, on one line or on all. */
export const PromiseReason = z
  .object({
    code: z.string(),
    lineId: Id.nullable().describe("null: holds for every line"),
    text: z.string(),
    cause: PromiseCause.exactOptional().describe("The same apart from words"),
  })
  .meta({ id: "PromiseReason" });
export type PromiseReason = z.infer<typeof PromiseReason>;

/** The answer to one enquiry. */
export const PromiseOutcome = z
  .discriminatedUnion("status", [
    z
      .object({ status: z.literal("from stock"), promised: InstantText })
      .describe("All pieces are there, and no other order has them"),
    z.object({ status: z.literal("promised"), offer: Offer }),
    z
      .object({ status: z.literal("impossible"), reasons: z.array(PromiseReason).min(1) })
      .describe(
        "Nothing within the horizon without making others late: what stands against it, line by line",
      ),
  ])
  .meta({ id: "PromiseOutcome" });
export type PromiseOutcome = z.infer<typeof PromiseOutcome>;

/**
 * `POST …/promises`: the earliest finish that makes no other order later than promised.
 *
 * @example {
 *   "enquiry": { "productId": "T95-0500 white", "productName": "Tub 500 white", "pieces": 40000, "wantedAt": "2026-12-04T23:00:00Z", "partsAllowed": true },
 *   "base": { "planId": "…", "revision": 7, "sameInputs": true, "from": "2026-11-30T05:00:00Z", "until": "2026-12-28T05:00:00Z", "unplannedOrders": 0, "unplannedHolds": [] },
 *   "currency": "EUR",
 *   "quantity": { "fromStockPieces": 0, "toMakePieces": 40000, "grossPieces": 40817, "steps": [{ "kind": "scrap", "share": 0.02, "pieces": 40817 }] },
 *   "outcome": { "status": "promised", "offer": { "kind": "whole", "promised": "2026-12-03T14:20:00Z", "…": "…" } }
 * }
 */
export const PromiseResponse = z
  .object({
    enquiry: UnderstoodEnquiry,
    base: PromiseBase,
    currency: z.string(),
    quantity: PromiseQuantity,
    outcome: PromiseOutcome,
  })
  .meta({ id: "PromiseResponse" });
export type PromiseResponse = z.infer<typeof PromiseResponse>;

/**
 * `POST …/promises/alternatives` with the same body: other ways beside the first answer, the earliest promise first. Takes longer
 * than the first answer: hours are added and the plan is timed anew for it.
 */
export const AlternativesResponse = z
  .object({
    base: PromiseBase,
    offers: z.array(Offer).max(6),
    none: z
      .array(
        z.object({
          kind: OfferKind,
          reason: z.string().describe("Stable code, such as one-line or no-gain"),
        }),
      )
      .describe("Kinds that were tried and lead nowhere, and why"),
  })
  .meta({ id: "AlternativesResponse" });
export type AlternativesResponse = z.infer<typeof AlternativesResponse>;

/** `POST …/promises/sureness`: how sure an offer is, by simulated days with the line's breakdowns and spread of rates. */
export const SurenessRequest = z
  .object({
    enquiry: PromiseEnquiry,
    kind: OfferKind.default("whole"),
    by: ExistingInstant.nullable()
      .default(null)
      .describe("Chance for which instant; null: wanted, else promised"),
    seed: z.int().min(0).max(4_294_967_295).default(1),
    runs: z.int().min(10).max(2_000).default(400),
  })
  .meta({ id: "SurenessRequest" });
export type SurenessRequest = z.infer<typeof SurenessRequest>;

/** @example { "by": "2026-12-04T23:00:00Z", "chance": 0.93, "at80": "2026-12-03T18:00:00Z", "at95": "2026-12-05T04:30:00Z", "runs": 400, "seed": 1 } */
export const SurenessResponse = z
  .object({
    by: InstantText,
    chance: z.number().min(0).max(1).describe("Share of the runs that are finished by then"),
    at80: InstantText.nullable().describe(
      "By when 80 % of the runs are finished; null: not within the horizon",
    ),
    at95: InstantText.nullable(),
    runs: z.int(),
    seed: z.int(),
  })
  .meta({ id: "SurenessResponse" });
export type SurenessResponse = z.infer<typeof SurenessResponse>;

export const BatchMode = z
  .enum(["each alone", "in turn", "together"])
  .describe(
    "each alone: as if there were no other; in turn: each takes its place before the next; together: in the sequence that serves them best",
  )
  .meta({ id: "BatchMode" });
export type BatchMode = z.infer<typeof BatchMode>;

/** `POST …/promises/batch`: many enquiries at once. Nothing is held. */
export const BatchRequest = z
  .object({ mode: BatchMode, enquiries: z.array(PromiseEnquiry).min(1).max(200) })
  .meta({ id: "BatchRequest" });
export type BatchRequest = z.infer<typeof BatchRequest>;

export const BatchAnswer = z
  .object({
    row: z.int().min(1).describe("Row of the file, or place in the list, from 1"),
    reference: z.string().describe("What the file calls the enquiry; empty where it says nothing"),
    enquiry: UnderstoodEnquiry,
    quantity: PromiseQuantity,
    outcome: PromiseOutcome,
  })
  .meta({ id: "BatchAnswer" });
export type BatchAnswer = z.infer<typeof BatchAnswer>;

export const BatchResponse = z
  .object({ base: PromiseBase, currency: z.string(), mode: BatchMode, answers: z.array(BatchAnswer) })
  .meta({ id: "BatchResponse" });
export type BatchResponse = z.infer<typeof BatchResponse>;

/** `POST …/promises/file` (multipart, one .csv or .xlsx) answers as JSON, or as a table to take away. */
export const BatchFileQuery = z.object({
  mode: BatchMode.default("in turn"),
  format: z.enum(["json", "csv", "xlsx"]).default("json"),
});
export type BatchFileQuery = z.infer<typeof BatchFileQuery>;
