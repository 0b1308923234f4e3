/** One lot of a plan; `lot` is 0-based. */
interface LotName {
  readonly orderId: string;
  readonly lot: number;
}

/** Where a lot is to run; `before` is the lot that comes right after it on the line, null when it is the last. */
interface NewPlace {
  readonly lineId: string;
  readonly before: LotName | null;
}

/** One change of a plan by hand. */
export type PlanEdit =
  | ({ readonly kind: "move" } & LotName & NewPlace)
  | { readonly kind: "take out"; readonly orderId: string }
  | { readonly kind: "put back"; readonly orderId: string }
  | ({ readonly kind: "split"; readonly pieces: number } & LotName & NewPlace)
  | { readonly kind: "join"; readonly orderId: string };
