import type { Compared } from "@formweek/scheduler";

/** What stands against holding an order at a place, apart from words. Instants are ISO 8601 UTC. */
export type PinCause =
  | { readonly kind: "no place named" }
  | { readonly kind: "covered by stock" }
  | { readonly kind: "no such line"; readonly lineId: string }
  | {
      readonly kind: "does not fit";
      readonly mouldId: string;
      readonly check: string;
      readonly compared: Compared;
    }
  | { readonly kind: "outside window"; readonly from: string; readonly to: string }
  | { readonly kind: "before earliest start"; readonly earliest: string }
  /** `next`: the next working time in the window; null: there is none. */
  | { readonly kind: "closed"; readonly next: string | null };
