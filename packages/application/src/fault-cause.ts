import type { RecordFault } from "@formweek/capacity-model";
import type { PinCause } from "./commands/pin-cause.ts";
import type { HoursCause } from "./planning/hours-cause.ts";
import type { ScenarioCause } from "./scenarios/scenario-cause.ts";
import type { TableFault } from "./ports/table-reader.ts";
import type { ValueFault } from "./value-fault.ts";

/** What stands behind a refusal, apart from words. Instants are ISO 8601 UTC. */
export type FaultCause =
  PinCause | RecordFault | ValueFault | HoursCause | OrderCause | StepCause | ScenarioCause | FileCause;

/** What stands against a change of orders. */
type OrderCause =
  | { readonly kind: "no order named" }
  | { readonly kind: "order changed twice" }
  | { readonly kind: "order gets another number" }
  | { readonly kind: "order gone" }
  | { readonly kind: "order there already" }
  /** `now`, `seen`: as written in the plant; null: empty. */
  | {
      readonly kind: "order changed meanwhile";
      readonly field: string;
      readonly now: string | null;
      readonly seen: string | null;
    };

/** What stands against a step of the working plan, or a choice for it. */
type StepCause =
  | {
      readonly kind: "order frozen";
      readonly orderId: string;
      readonly lineId: string | null;
      readonly at: string;
    }
  | { readonly kind: "frozen end outside plan"; readonly from: string; readonly to: string }
  | { readonly kind: "order not late"; readonly orderId: string }
  | { readonly kind: "nothing at place"; readonly place: number };

/** Why a file could not be read. */
interface FileCause {
  readonly kind: "file unreadable";
  readonly code: TableFault["code"];
}
