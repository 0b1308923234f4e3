import type { Text } from "../../text/text.ts";

export type PlantSection = keyof Text["plant"]["sections"];

/** Parts of the plant in the order of the menu; each is an address under /plant. */
export const plantSections: readonly PlantSection[] = [
  "rates",
  "lines",
  "moulds",
  "sheets",
  "products",
  "calendars",
  "crews",
  "changes",
];
