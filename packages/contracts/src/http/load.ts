import { z } from "zod";
import { ExistingInstant, Id, InstantText, Pieces } from "../scalars.ts";
import { TableQuery } from "./exports.ts";

export const ResourceKind = z.enum(["line", "mould", "team", "pool"]).meta({ id: "ResourceKind" });
export type ResourceKind = z.infer<typeof ResourceKind>;

export const BucketSize = z.enum(["shift", "day", "week"]);
export type BucketSize = z.infer<typeof BucketSize>;

const LocalDate = z.iso.date();

/** Which load: the kind of resource, how fine, and from which day on. */
export const LoadQuery = z.object({
  kind: ResourceKind,
  bucket: BucketSize,
  from: LocalDate.optional().describe("Plant's local date; left out: from the planning start"),
});
export type LoadQuery = z.infer<typeof LoadQuery>;

export const LoadTableQuery = LoadQuery.extend(TableQuery.shape);

export const LoadBasis = z
  .enum(["planned", "rough-cut", "both", "none"])
  .describe("planned: from the working plan; rough-cut: orders without a place in it; none: nothing to do");
export type LoadBasis = z.infer<typeof LoadBasis>;

const seconds = z.number().min(0);
const secondsOfBuckets = z.array(seconds);

/**
 * A resource's load, one figure a bucket in each list, in seconds of one unit (line, copy, team, head).
 * run + change + stop + idle + closed = length of the bucket × units; committed = run + change, available = idle,
 * unattainable = stop + closed.
 */
export const ResourceLoad = z
  .object({
    id: Id,
    units: z.number().describe("Lines, copies, teams, or the most heads at once"),
    run: secondsOfBuckets,
    change: secondsOfBuckets,
    stop: secondsOfBuckets,
    idle: secondsOfBuckets,
    closed: secondsOfBuckets,
    beyond: secondsOfBuckets.describe("Work that has no room in the bucket; part of no other figure"),
    outside: secondsOfBuckets.describe("Planned work outside the resource's hours; part of no other figure"),
    share: z
      .array(z.number().nullable())
      .describe("(run + change + beyond) / (run + change + idle); null where nothing can be worked"),
    basis: z.array(LoadBasis),
  })
  .meta({ id: "ResourceLoad" });
export type ResourceLoad = z.infer<typeof ResourceLoad>;

export const LoadBucket = z
  .object({
    label: z.string().describe("2026-W49, 2026-12-01, or 2026-12-01 with the shift's name"),
    start: InstantText,
    end: InstantText,
  })
  .meta({ id: "LoadBucket" });
export type LoadBucket = z.infer<typeof LoadBucket>;

export const UnplacedOrder = z.object({
  orderId: Id,
  reason: z
    .enum(["no line", "no hours"])
    .describe("No line can make it; none of those that can works before it is due"),
});

export const LoadResponse = z.object({
  planId: Id.nullable().describe("Plan that the near weeks come from; null: never planned"),
  plannedUntil: InstantText.nullable(),
  window: z.object({ start: InstantText, end: InstantText }),
  buckets: z.array(LoadBucket),
  previousFrom: LocalDate.nullable().describe("Where the view before begins; null: there is none"),
  nextFrom: LocalDate.nullable(),
  resources: z.array(ResourceLoad),
  roughOrders: z.int().describe("Orders without a place in the plan that are spread roughly"),
  unplaced: z.array(UnplacedOrder).describe("Orders that load nothing, at most 50"),
  unplacedCount: z.int(),
});
export type LoadResponse = z.infer<typeof LoadResponse>;

export const LoadOrdersQuery = z.object({
  kind: ResourceKind,
  id: Id,
  start: ExistingInstant,
  end: ExistingInstant,
});
export type LoadOrdersQuery = z.infer<typeof LoadOrdersQuery>;

export const LoadingOrder = z
  .object({
    orderId: Id,
    order: z
      .object({ customer: z.string(), productId: Id, pieces: Pieces, due: InstantText })
      .nullable()
      .describe("Null: no longer in the book"),
    runSeconds: seconds,
    changeSeconds: seconds,
    basis: LoadBasis,
  })
  .meta({ id: "LoadingOrder" });

export const LoadOrdersResponse = z.object({
  orders: z.array(LoadingOrder).describe("The greatest first, at most 200"),
  total: z.int(),
});
export type LoadOrdersResponse = z.infer<typeof LoadOrdersResponse>;

const gain = {
  gainedSeconds: seconds.describe("More time to work in, seconds of one unit"),
  shareBefore: z.number().nullable(),
  shareAfter: z.number().nullable(),
};

/** What one measure would give in the week that is loaded most, with the same work. */
export const Relief = z
  .discriminatedUnion("kind", [
    z.object({
      kind: z.literal("shift"),
      name: z.string(),
      start: InstantText,
      end: InstantText,
      lineId: Id.nullable().describe("Line that would work, for a line or a mould"),
      ...gain,
    }),
    z.object({ kind: z.literal("copy"), copies: z.int().describe("Copies with the new one"), ...gain }),
  ])
  .meta({ id: "LoadRelief" });
export type Relief = z.infer<typeof Relief>;

const LoadedWeek = z.object({
  ...LoadBucket.shape,
  neededSeconds: seconds,
  attainableSeconds: seconds,
  share: z.number().nullable(),
  basis: LoadBasis,
});

export const LoadFinding = z
  .object({
    kind: ResourceKind,
    id: Id,
    units: z.number(),
    weeks: z.array(LoadedWeek).min(1).describe("Weeks beyond the limit, in order of time"),
    worst: z.int().describe("Place of the week that is loaded most"),
    beyondSeconds: seconds.describe("Work beyond the hours of these weeks, seconds of one unit"),
    reliefs: z.array(Relief).describe("For the week that is loaded most; empty: neither gives anything"),
  })
  .meta({ id: "LoadFinding" });
export type LoadFinding = z.infer<typeof LoadFinding>;

export const LoadFindingsResponse = z.object({
  bottleneck: LoadFinding.extend({
    orders: z.array(z.object({ orderId: Id, seconds })).describe("Orders behind it, at most 10"),
    orderCount: z.int(),
  }).nullable(),
  resources: z
    .array(LoadFinding)
    .describe("Moulds above 90 %, lines, teams and pools beyond their hours; the worst first"),
  sheets: z
    .array(
      z.object({
        sheetId: Id,
        at: InstantText,
        missingKg: z.number(),
        nextArrivalAt: InstantText.nullable(),
      }),
    )
    .describe("Sheets that run out before their next arrival, the first first"),
});
export type LoadFindingsResponse = z.infer<typeof LoadFindingsResponse>;
