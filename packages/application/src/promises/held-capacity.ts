import { isoInstant } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { workingPlanOf } from "../queries/working-plan-of.ts";
import type { HoldState, OfferKind, StoredHold } from "../ports/hold-repository.ts";

/** A hold as people and other programs read it. Instants are ISO 8601 UTC. */
export interface HeldCapacity {
  readonly holdId: string;
  /** What its run is called in plans; the order's number once it became one. */
  readonly orderId: string;
  readonly state: HoldState;
  readonly customer: string;
  readonly productId: string;
  readonly productName: string;
  readonly pieces: number;
  readonly kind: OfferKind;
  readonly promised: string;
  readonly until: string;
  readonly heldBy: string;
  readonly heldAt: string;
  readonly endedBy: string | null;
  readonly endedAt: string | null;
  /** By the working plan; null: from stock, or without a place in it. */
  readonly finish: string | null;
  /** The working plan finishes it in time; null once it has ended. */
  readonly keepsPromise: boolean | null;
}

/** What a hold is described with. */
export interface HoldContext {
  readonly productNames: ReadonlyMap<string, string>;
  /** The working plan; null: there is none. */
  readonly plan: Pick<PlanDocument, "orders"> | null;
}

/** Names and the working plan of a plant, for its holds. */
export async function holdContextOf(
  repositories: Pick<Repositories, "plants" | "steps" | "plans">,
  plantId: string,
): Promise<HoldContext> {
  const stored = await repositories.plants.get(plantId);
  const plan = await workingPlanOf(repositories, plantId);
  const products = stored?.plant.products ?? [];
  return {
    productNames: new Map<string, string>(products.map(({ id, name }) => [id, name])),
    plan: plan?.document ?? null,
  };
}

export function describeHold(hold: StoredHold, { productNames, plan }: HoldContext): HeldCapacity {
  const { order, ending } = hold;
  const orderId = ending?.orderNumber ?? order.id;
  const planned = plan?.orders.find((each) => each.orderId === orderId);
  const finish = planned?.finish ?? null;
  const promised = isoInstant(order.dueAt);
  const inTime = planned?.state === "covered by stock" || (finish !== null && finish <= promised);
  return {
    holdId: hold.id,
    orderId,
    state: ending?.state ?? "held",
    customer: order.customer,
    productId: order.productId,
    productName: productNames.get(order.productId) ?? order.productId,
    pieces: order.pieces,
    kind: hold.kind,
    promised,
    until: isoInstant(hold.until),
    heldBy: hold.heldBy,
    heldAt: isoInstant(hold.heldAt),
    endedBy: ending?.by ?? null,
    endedAt: ending === null ? null : isoInstant(ending.at),
    finish,
    keepsPromise: ending === null ? inTime : null,
  };
}
