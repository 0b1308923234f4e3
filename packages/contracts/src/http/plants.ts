import { z } from "zod";
import { Id, Revision } from "../scalars.ts";

/** One plant in a list. */
export const PlantSummary = z
  .object({
    id: Id,
    name: z.string(),
    timeZone: z.string().describe("IANA zone in which shifts, closures and due days are read"),
    currency: z.string().describe("ISO 4217 code"),
    revision: Revision,
  })
  .meta({ id: "PlantSummary" });
export type PlantSummary = z.infer<typeof PlantSummary>;

/** Plants that the caller has a role in, by id. */
export const PlantListResponse = z.array(PlantSummary);
export type PlantListResponse = z.infer<typeof PlantListResponse>;

/**
 * A plant's records with their revision. The records are those of the capacity model's `Plant`; the server checks and
 * documents them by that schema, a reader parses them by it.
 */
export const PlantResponse = z.object({
  revision: Revision,
  plant: z.looseObject({ id: Id, name: z.string() }),
});
export type PlantResponse = z.infer<typeof PlantResponse>;
