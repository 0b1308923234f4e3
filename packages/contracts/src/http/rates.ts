import { z } from "zod";
import { Compared } from "../plan-cause.ts";
import { Id } from "../scalars.ts";

/** Narrows the list; both may be left out. */
export const RatesQuery = z.object({ lineId: Id.optional(), mouldId: Id.optional() });
export type RatesQuery = z.infer<typeof RatesQuery>;

/** Why a mould may not run on a line. */
export const FitRefusal = z
  .object({
    code: z.string(),
    text: z.string().describe("One sentence with the numbers"),
    numbers: z.record(z.string(), z.number()).describe("The figures compared; the unit is in the name"),
    compared: Compared.nullable().describe("Null where the machine's cycle, not a fit check, is against it"),
  })
  .meta({ id: "FitRefusal" });
export type FitRefusal = z.infer<typeof FitRefusal>;

/** Rate of one line × mould × product, with what limits it. */
export const Rate = z
  .object({
    cyclesPerMin: z.number(),
    piecesPerHour: z.number(),
    sheetKgPerHour: z.number(),
    skeletonShare: z.number().describe("Share of the sheet that is trimmed away, 0 to 1"),
    proven: z.boolean().describe("Measured on the shop floor: wins over the computed rate"),
    limit: z.object({
      name: z.string().describe("What limits the cycle"),
      text: z.string().describe("The same in a sentence"),
      byShare: z
        .number()
        .nullable()
        .describe(
          "Share by which the cycle is longer than the next limit asks; null without a next, or when proven",
        ),
    }),
    parts: z
      .record(z.string(), z.number())
      .describe("Parts of the computed cycle, unit in each name; empty where it can not be computed"),
  })
  .meta({ id: "Rate" });
export type Rate = z.infer<typeof Rate>;

/** One line × mould × product that the mould makes. */
export const RateEntry = z
  .object({
    lineId: Id,
    mouldId: Id,
    productId: Id,
    fits: z.boolean(),
    refusals: z.array(FitRefusal).describe("Every reason against it; empty when it has a rate"),
    rate: Rate.nullable().describe("Null when it does not fit, or its data contradict each other"),
  })
  .meta({ id: "RateEntry" });
export type RateEntry = z.infer<typeof RateEntry>;

export const RatesResponse = z.array(RateEntry);
export type RatesResponse = z.infer<typeof RatesResponse>;
