import type { Order, Plant } from "@formweek/capacity-model";
import type {
  Adopted,
  AppError,
  AppliedCounts,
  BookStepKind,
  CurvePoint,
  HandEdit,
  HoldState,
  ImportAcceptance,
  ImportChange,
  OrderChange,
  OfferKind,
  PlanDocument,
  PlanHead,
  PlanSketch,
  PlantEventBody,
  RunFindings,
  RunParams,
  RunState,
  RunTask,
  ScenarioChange,
  SolveProgressReport,
  StepKind,
  StepRecords,
  StoredOutcome,
} from "@formweek/application";
import {
  bigint,
  boolean,
  doublePrecision,
  integer,
  json,
  pgSchema,
  primaryKey,
  text,
} from "drizzle-orm/pg-core";

/**
 * Tables as the repositories see them; the migrations make them. An own database schema keeps the names apart from any
 * neighbour's. Instants are integer seconds since the epoch, UTC. Documents are `json`, not `jsonb`: they come back
 * exactly as they were written, key order included, and nothing searches inside them.
 */
const formweek = pgSchema("formweek");

const instant = (name: string) => bigint(name, { mode: "number" });
const revision = () => bigint("revision", { mode: "number" }).notNull();

export const plants = formweek.table("plants", {
  id: text("id").primaryKey(),
  revision: revision(),
  name: text("name").notNull(),
  timeZone: text("time_zone").notNull(),
  currency: text("currency").notNull(),
  document: json("document").$type<Plant>().notNull(),
});

export const orderBooks = formweek.table("order_books", {
  plantId: text("plant_id").primaryKey(),
  revision: revision(),
});

export const orders = formweek.table(
  "orders",
  {
    plantId: text("plant_id").notNull(),
    id: text("id").$type<Order["id"]>().notNull(),
    customer: text("customer").notNull(),
    productId: text("product_id").$type<Order["productId"]>().notNull(),
    pieces: bigint("pieces", { mode: "number" }).notNull(),
    dueAt: instant("due_at").notNull(),
    earliestStartAt: instant("earliest_start_at"),
    weight: doublePrecision("weight").notNull(),
    kind: text("kind").$type<Order["kind"]>().notNull(),
    underTolerance: doublePrecision("under_tolerance").notNull(),
    overTolerance: doublePrecision("over_tolerance").notNull(),
    partsAllowed: boolean("parts_allowed").notNull(),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.id] })],
);

export const bookSteps = formweek.table("book_steps", {
  number: bigint("number", { mode: "number" }).generatedAlwaysAsIdentity().primaryKey(),
  plantId: text("plant_id").notNull(),
  desk: text("desk").notNull(),
  kind: text("kind").$type<BookStepKind>().notNull(),
  of: bigint("step_of", { mode: "number" }),
  changeCount: integer("change_count").notNull(),
  changes: json("changes").$type<readonly OrderChange[]>().notNull(),
  by: text("done_by").notNull(),
  at: instant("done_at").notNull(),
});

export const pinLists = formweek.table("pin_lists", {
  plantId: text("plant_id").primaryKey(),
  revision: revision(),
});

export const pins = formweek.table(
  "pins",
  {
    plantId: text("plant_id").notNull(),
    orderId: text("order_id").notNull(),
    lineId: text("line_id"),
    startAt: instant("start_at"),
    pinnedBy: text("pinned_by").notNull(),
    pinnedAt: instant("pinned_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.orderId] })],
);

export const holdLists = formweek.table("hold_lists", {
  plantId: text("plant_id").primaryKey(),
  revision: revision(),
});

export const holds = formweek.table(
  "holds",
  {
    plantId: text("plant_id").notNull(),
    id: text("id").notNull(),
    key: text("key").notNull(),
    wish: text("wish").notNull(),
    order: json("planned_order").$type<Order>().notNull(),
    stockPieces: bigint("stock_pieces", { mode: "number" }).notNull(),
    kind: text("kind").$type<OfferKind>().notNull(),
    until: instant("held_until").notNull(),
    heldBy: text("held_by").notNull(),
    heldAt: instant("held_at").notNull(),
    state: text("state").$type<HoldState>().notNull(),
    endedBy: text("ended_by"),
    endedAt: instant("ended_at"),
    orderNumber: text("order_number"),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.id] })],
);

export const imports = formweek.table("imports", {
  id: text("id").primaryKey(),
  plantId: text("plant_id").notNull(),
  baseRevision: bigint("base_revision", { mode: "number" }).notNull(),
  change: json("change").$type<ImportChange>(),
  counts: json("counts").$type<AppliedCounts>().notNull(),
  createdAt: instant("created_at").notNull(),
  createdBy: text("created_by").notNull(),
  accepted: json("accepted").$type<ImportAcceptance>(),
});

export const runs = formweek.table("runs", {
  id: text("id").primaryKey(),
  plantId: text("plant_id").notNull(),
  revision: revision(),
  state: text("state").$type<RunState>().notNull(),
  task: json("task").$type<RunTask>().notNull(),
  params: json("params").$type<RunParams>().notNull(),
  stopRequested: boolean("stop_requested").notNull(),
  keep: integer("keep"),
  requestedAt: instant("requested_at").notNull(),
  requestedBy: text("requested_by").notNull(),
  startedAt: instant("started_at"),
  endedAt: instant("ended_at"),
  progress: json("progress").$type<SolveProgressReport>(),
  curve: json("curve").$type<readonly CurvePoint[]>().notNull(),
  planId: text("plan_id"),
  findings: json("findings").$type<RunFindings>(),
  problem: json("problem").$type<AppError>(),
  recoveries: integer("recoveries").notNull(),
});

export const scenarios = formweek.table(
  "scenarios",
  {
    plantId: text("plant_id").notNull(),
    id: text("id").notNull(),
    revision: revision(),
    name: text("name").notNull(),
    changes: json("changes").$type<readonly ScenarioChange[]>().notNull(),
    by: text("written_by").notNull(),
    at: instant("written_at").notNull(),
    adopted: json("adopted").$type<Adopted>(),
    outcome: json("outcome").$type<StoredOutcome>(),
    sketch: json("sketch").$type<PlanSketch>(),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.id] })],
);

export const provisionalPlans = formweek.table("provisional_plans", {
  runId: text("run_id").primaryKey(),
  number: integer("number").notNull(),
  foundAt: instant("found_at").notNull(),
  document: json("document").$type<PlanDocument>().notNull(),
});

export const plans = formweek.table("plans", {
  id: text("id").primaryKey(),
  plantId: text("plant_id").notNull(),
  runId: text("run_id").unique(),
  parentId: text("parent_id"),
  edit: json("edit").$type<HandEdit>(),
  createdAt: instant("created_at").notNull(),
  engineVersion: text("engine_version").notNull(),
  seed: bigint("seed", { mode: "number" }).notNull(),
  steps: bigint("steps", { mode: "number" }).notNull(),
  summary: json("summary").$type<PlanHead["summary"]>().notNull(),
  document: json("document").$type<PlanDocument>().notNull(),
});

export const planSteps = formweek.table(
  "plan_steps",
  {
    plantId: text("plant_id").notNull(),
    revision: revision(),
    kind: text("kind").$type<StepKind>().notNull(),
    fromPlanId: text("from_plan_id"),
    planId: text("plan_id").notNull(),
    undoTo: bigint("undo_to", { mode: "number" }),
    redoTo: bigint("redo_to", { mode: "number" }),
    records: json("records").$type<StepRecords>(),
    note: text("note"),
    frozenUntil: instant("frozen_until"),
    by: text("done_by").notNull(),
    at: instant("done_at").notNull(),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.revision] })],
);

export const eventCounters = formweek.table("event_counters", {
  plantId: text("plant_id").primaryKey(),
  lastSequence: bigint("last_sequence", { mode: "number" }).notNull(),
});

export const events = formweek.table(
  "events",
  {
    plantId: text("plant_id").notNull(),
    sequence: bigint("sequence", { mode: "number" }).notNull(),
    at: instant("at").notNull(),
    body: json("body").$type<PlantEventBody>().notNull(),
    published: boolean("published").notNull(),
  },
  (table) => [primaryKey({ columns: [table.plantId, table.sequence] })],
);
