import type { Compared } from "../problem/problem-data.ts";

/** What stands against planning an order, apart from any words. Spans are whole seconds. */
export type UnplannedCause =
  | { readonly kind: "no line" }
  | {
      readonly kind: "does not fit";
      readonly mouldId: string;
      /** Code of the fit check. */
      readonly check: string;
      readonly compared: Compared;
    }
  | { readonly kind: "no mould copy"; readonly mouldId: string }
  /** From the earliest start to the end of the horizon the line is open for less than the run. */
  | { readonly kind: "line open too short"; readonly runSeconds: number; readonly leftSeconds: number }
  | { readonly kind: "operators too short"; readonly runSeconds: number; readonly leftSeconds: number }
  | { readonly kind: "setters too short"; readonly workSeconds: number }
  | { readonly kind: "longer than horizon"; readonly runSeconds: number; readonly horizonSeconds: number }
  | { readonly kind: "ends after horizon"; readonly runSeconds: number }
  | { readonly kind: "starts after horizon" }
  /** What the orders planned on the line leave of it is less than the run. */
  | { readonly kind: "no time left"; readonly runSeconds: number; readonly leftSeconds: number }
  /** Against its latest start: at its pinned start, with nothing else planned, or behind the orders planned. */
  | {
      readonly kind: "starts too late";
      readonly bySeconds: number;
      readonly where: "pinned" | "alone" | "behind others";
    }
  | { readonly kind: "pinned too early"; readonly bySeconds: number }
  | { readonly kind: "pinned to closed time" }
  | { readonly kind: "pinned start taken" }
  | { readonly kind: "pinned to other line" }
  | { readonly kind: "sheet never arrives"; readonly sheetId: string; readonly kg: number }
  | { readonly kind: "sheet used up"; readonly sheetId: string }
  | { readonly kind: "taken out" };
