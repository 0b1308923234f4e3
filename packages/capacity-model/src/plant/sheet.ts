import { z } from "zod";
import { PolymerName } from "./polymer.ts";
import { LocalDateTime, SheetId, displayName, nonNegative, positive } from "./scalars.ts";

/** `darkness` ranks colours for sequencing: 0 clear or natural, 100 black; a greater rank is darker. */
export const SheetColour = z.object({
  name: displayName,
  hex: z.string().regex(/^#[0-9a-fA-F]{6}$/, "must be #rrggbb"),
  darkness: z.int().min(0).max(100),
  clear: z.boolean().default(false),
});
export type SheetColour = z.infer<typeof SheetColour>;

export const SheetArrival = z.object({ at: LocalDateTime, kg: positive });
export type SheetArrival = z.infer<typeof SheetArrival>;

export const Sheet = z.object({
  id: SheetId,
  name: displayName,
  polymer: PolymerName,
  thicknessMm: z.number().min(0.05).max(10),
  widthMm: positive,
  colour: SheetColour,
  reelKg: positive,
  /** Kilograms on hand at the start; null: always enough (made in line or not tracked). */
  stockKg: nonNegative.nullable(),
  arrivals: z.array(SheetArrival).max(500).default([]),
});
export type Sheet = z.infer<typeof Sheet>;
