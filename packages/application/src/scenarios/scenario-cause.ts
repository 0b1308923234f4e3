/** What stands against a change of a scenario, apart from words. Instants are ISO 8601 UTC. */
export type ScenarioCause =
  /** `first`: place of the other change, from 1. */
  | { readonly kind: "changed twice"; readonly first: number }
  | {
      readonly kind: "too many copies";
      readonly mouldId: string;
      readonly copies: number;
      readonly most: number;
    }
  | { readonly kind: "rate out of range"; readonly least: number; readonly most: number }
  | { readonly kind: "mould not on line"; readonly mouldId: string; readonly lineId: string }
  | { readonly kind: "spell too long"; readonly mostDays: number }
  | { readonly kind: "run frozen"; readonly orderId: string; readonly lineId: string; readonly at: string }
  | { readonly kind: "order pinned"; readonly orderId: string }
  | { readonly kind: "number taken"; readonly orderId: string }
  | { readonly kind: "order left as it is"; readonly orderId: string };
