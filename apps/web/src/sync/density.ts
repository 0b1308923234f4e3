import type { Density } from "../kernels/row-layout.ts";
import { keptChoice, useKeptChoice } from "./kept-choice.ts";

/** How close together rows, fields and buttons stand. */
export const densityChoice = keptChoice<Density>("formweek.density", (kept) =>
  kept === "compact" ? kept : "roomy",
);

export function useDensity(): Density {
  return useKeptChoice(densityChoice);
}
