import type { Density } from "../kernels/row-layout.ts";
import { keptChoice } from "./kept-choice.ts";

/** How close together rows, fields and buttons stand. */
export const densityChoice = keptChoice<Density>("formweek.density", (kept) =>
  kept === "compact" ? kept : "roomy",
);
