import type { RecordFault } from "@formweek/capacity-model";

/**
 * What stands against a change of a plant's hours, apart from words. Times without a zone are the plant's clock as it is
 * written: "2026-11-30 06:00".
 */
export type HoursCause =
  | { readonly kind: "no such line"; readonly lineId: string }
  | Extract<RecordFault, { readonly kind: "unknown reference" | "no such date" | "ends before start" }>
  | (Spell & { readonly kind: "line closed already"; readonly lineId: string })
  | { readonly kind: "no such closure" }
  | { readonly kind: "shift for nobody" }
  | { readonly kind: "named twice"; readonly id: string }
  | { readonly kind: "shift without length"; readonly at: string }
  | { readonly kind: "hour skipped"; readonly at: string; readonly instead: string }
  | {
      readonly kind: "line works already";
      readonly lineId: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: "no such added shift"; readonly name: string; readonly date: string }
  | { readonly kind: "after plan"; readonly planEnd: string }
  | { readonly kind: "over before plan"; readonly over: string; readonly planStart: string };

/** A spell and why. */
interface Spell {
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}
