import { z } from "zod";
import { ExistingInstant, InstantText } from "../scalars.ts";
import { OfferKind, PromiseEnquiry } from "./promises.ts";

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
