import { z } from "zod";
import { ChangeTaskKind, LateCause, LateRoot, UnplannedReason } from "./plan-cause.ts";
import { Id, InstantText, Pieces } from "./scalars.ts";

/** What became of an order in a plan. */
export const OrderState = z.enum(["on time", "late", "covered by stock", "unplanned", "partly planned"]);
export type OrderState = z.infer<typeof OrderState>;

const Seconds = z.int().min(0);
const OnLine = {
  lineId: Id,
  start: InstantText,
  end: InstantText.describe("Half-open: the segment ends before this instant"),
};

/** One of a mould's identical copies. */
export const MouldCopy = z
  .object({ mouldId: Id, copy: z.int().min(1).describe("1-based") })
  .meta({ id: "MouldCopy" });
export type MouldCopy = z.infer<typeof MouldCopy>;

/** Work between two set-ups of a line. */
export const ChangeSegment = z
  .object({
    kind: z.literal("change"),
    ...OnLine,
    mountStart: InstantText.describe("End of dismounting, start of mounting"),
    tailStart: InstantText.describe("End of the setters' work, start of heating up and first-piece check"),
    stripping: z.boolean().describe("Only the hanging mould is taken out, for another line"),
    teamId: Id.nullable(),
    trolleyId: Id.nullable(),
    fromSetupId: z.string().nullable(),
    toSetupId: z.string(),
    mouldOut: MouldCopy.nullable(),
    mouldIn: MouldCopy.nullable(),
    minutes: z
      .number()
      .describe("Work of the change, minutes; its span on the line is longer where setters pause"),
    scrapKg: z.number().describe("Start-up scrap, kg"),
    tasks: z.array(
      z.object({
        kind: ChangeTaskKind.exactOptional().describe("Absent in older plans"),
        name: z.string(),
        minutes: z.number(),
        byTeam: z.boolean().describe("Done by the setters"),
      }),
    ),
  })
  .meta({ id: "ChangeSegment" });
export type ChangeSegment = z.infer<typeof ChangeSegment>;

/** An unbroken stretch of running; a lot that pauses has several. */
export const RunSegment = z
  .object({
    kind: z.literal("run"),
    ...OnLine,
    orderId: Id,
    lot: z.int().min(0).describe("0-based lot of the order"),
    productId: Id,
    productName: z.string(),
    customer: z.string(),
    mould: MouldCopy.nullable(),
    mouldName: z.string(),
    sheetId: z.string(),
    sheetName: z.string(),
    colour: z.object({ name: z.string(), hex: z.string(), clear: z.boolean() }),
    setupId: z.string(),
    pieces: Pieces.describe("Formed in this stretch"),
    due: InstantText,
    lateSeconds: Seconds.describe("How late the order is; 0 when on time"),
  })
  .meta({ id: "RunSegment" });
export type RunSegment = z.infer<typeof RunSegment>;

/** A pause inside a lot, or the service of its mould before it. */
export const StopSegment = z
  .object({
    kind: z.literal("stop"),
    ...OnLine,
    reason: z.enum(["closed", "operators", "warm-up", "service"]),
    orderId: Id,
    lot: z.int().min(0),
  })
  .meta({ id: "StopSegment" });
export type StopSegment = z.infer<typeof StopSegment>;

export const PlanSegment = z.discriminatedUnion("kind", [ChangeSegment, RunSegment, StopSegment]);
export type PlanSegment = z.infer<typeof PlanSegment>;

/** A line over the plan's horizon. */
export const PlanLine = z
  .object({
    id: Id,
    name: z.string(),
    open: z.array(z.tuple([InstantText, InstantText])).describe("Working spells, half-open, ascending"),
    closures: z
      .array(z.object({ start: InstantText, end: InstantText, reason: z.string() }))
      .describe("Breakdowns and other dated stops"),
    extraShifts: z
      .array(z.object({ start: InstantText, end: InstantText, name: z.string() }))
      .default([])
      .describe(
        "Shifts worked once, on top of the weekly ones; empty too in plans from before they were written down",
      ),
    utilisation: z
      .object({
        runSeconds: Seconds,
        changeSeconds: Seconds,
        stopSeconds: Seconds,
        idleSeconds: Seconds,
        closedSeconds: Seconds,
      })
      .describe("Split of the time from the start to the last finish"),
  })
  .meta({ id: "PlanLine" });
export type PlanLine = z.infer<typeof PlanLine>;

/** A setter team over the plan's horizon. */
export const PlanTeam = z
  .object({
    id: Id,
    name: z.string(),
    open: z.array(z.tuple([InstantText, InstantText])).describe("Working spells, half-open, ascending"),
  })
  .meta({ id: "PlanTeam" });
export type PlanTeam = z.infer<typeof PlanTeam>;

/** A planned part of an order. */
export const PlanLot = z
  .object({
    orderId: Id,
    lot: z.int().min(0),
    lineId: Id,
    setupId: z.string(),
    pieces: Pieces,
    start: InstantText,
    end: InstantText,
    finish: InstantText.describe("End plus conditioning"),
    turn: z
      .enum(["gives way", "stripped first"])
      .exactOptional()
      .describe("How it takes its turn among lines that share moulds and teams; absent: as it comes"),
  })
  .meta({ id: "PlanLot" });
export type PlanLot = z.infer<typeof PlanLot>;

/** An order and what became of it. */
export const PlanOrder = z
  .object({
    orderId: Id,
    customer: z.string(),
    productId: Id,
    productName: z.string(),
    pieces: Pieces.describe("Ordered"),
    due: InstantText,
    state: OrderState,
    finish: InstantText.nullable(),
    lateSeconds: Seconds,
    slackSeconds: z.int().nullable().describe("Due minus finish; negative when late; null when not planned"),
    fromStockPieces: Pieces,
    toMakePieces: Pieces.describe("Good pieces left to make, rounded to whole packs"),
    grossPieces: Pieces.describe("To form, scrap allowance included"),
  })
  .meta({ id: "PlanOrder" });
export type PlanOrder = z.infer<typeof PlanOrder>;

/** An order that the plan leaves out, with every reason, most telling first. */
export const UnplannedOrder = z
  .object({ orderId: Id, reasons: z.array(UnplannedReason) })
  .meta({ id: "UnplannedOrder" });
export type UnplannedOrder = z.infer<typeof UnplannedOrder>;

/** One link of the chain that holds a late order. */
export const LateLink = z
  .object({
    kind: z.enum([
      "conditioning",
      "run",
      "change",
      "mould service",
      "carrying",
      "line closed",
      "no operators",
      "setters off",
      "other work first",
    ]),
    from: InstantText,
    to: InstantText,
    lineId: Id.nullable(),
    orderId: Id.nullable(),
    text: z.string(),
    cause: LateCause.exactOptional().describe("The same apart from words; absent in older plans"),
  })
  .meta({ id: "LateLink" });
export type LateLink = z.infer<typeof LateLink>;

/** A late order with what holds it. */
export const LateOrder = z
  .object({
    orderId: Id,
    lateSeconds: Seconds,
    since: InstantText.describe("Nothing that it waits for could have begun before"),
    sinceText: z.string(),
    root: LateRoot.exactOptional().describe("The same apart from words; absent in older plans"),
    links: z
      .array(LateLink)
      .describe("Without a gap from `since` to the finish, each what the next had to wait for"),
  })
  .meta({ id: "LateOrder" });
export type LateOrder = z.infer<typeof LateOrder>;

/** What the plan costs: amount × price = cost, term by term. */
export const PlanObjective = z
  .object({
    terms: z.array(
      z.object({
        name: z.string(),
        unit: z.string(),
        amount: z.number(),
        price: z.number(),
        cost: z.number(),
      }),
    ),
    total: z.number().describe("Sum of the costs, in the plant's currency"),
  })
  .meta({ id: "PlanObjective" });
export type PlanObjective = z.infer<typeof PlanObjective>;

/** The plan in a few numbers. */
export const PlanSummary = z
  .object({
    orders: z.int(),
    onTime: z.int(),
    late: z.int(),
    unplanned: z.int(),
    coveredByStock: z.int(),
    tardinessHours: z.number().describe("Sum over all late orders"),
    worstLateHours: z.number(),
    changes: z.int(),
    changeHours: z.number().describe("Hours that lines stand in changes"),
    teamHours: z.number().describe("Hours of setter teams in changes"),
    utilisation: z
      .number()
      .describe("Running time over working time from the start to the last finish, 0 to 1"),
    makespanEnd: InstantText.nullable().describe("End of the last run; null when nothing runs"),
  })
  .meta({ id: "PlanSummary" });
export type PlanSummary = z.infer<typeof PlanSummary>;

/** A plan as served by the API and written by the command line: one self-contained JSON document. */
export const PlanDocument = z
  .object({
    format: z.literal("formweek-plan/1"),
    engineVersion: z.string(),
    seed: z.int(),
    steps: z.int().describe("Steps of the search that made it; 0 for a plan that was changed by hand"),
    inputHash: z
      .string()
      .describe(
        "16 hex digits over plant, orders and held orders: equal hash, seed and steps give an equal plan, unless it was changed by hand or kept frozen runs",
      ),
    plant: z.object({ id: Id, name: z.string(), timeZone: z.string(), currency: z.string() }),
    horizon: z.object({ start: InstantText, end: InstantText }),
    lines: z.array(PlanLine),
    teams: z
      .array(PlanTeam)
      .default([])
      .describe("Setter teams; empty too in plans from before their hours were written down"),
    segments: z.array(PlanSegment).describe("By line, then start; never overlapping on a line"),
    lots: z.array(PlanLot),
    orders: z.array(PlanOrder),
    unplanned: z.array(UnplannedOrder),
    late: z
      .array(LateOrder)
      .default([])
      .describe("The worst first; empty too in plans from before it was worked out"),
    objective: PlanObjective,
    bound: z
      .object({
        total: z.number(),
        gap: z.number().describe("(total − bound) ÷ total, 0 when proven best"),
        parts: z
          .object({
            lateness: z.number().describe("Cost of weighted lateness and late orders"),
            changes: z.number().describe("Cost of changes: line and setter time, start-up scrap"),
            changeMinutes: z.number().describe("Minutes that lines stand in changes"),
          })
          .nullable()
          .default(null)
          .describe("What each must come to at least; null where orders are left out, and in older plans"),
      })
      .nullable()
      .describe("A proven lower bound of the total; null when none is known"),
    summary: PlanSummary,
  })
  .meta({ id: "PlanDocument" });
export type PlanDocument = z.infer<typeof PlanDocument>;
