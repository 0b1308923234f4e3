import type { PlanDocument } from "../planning/plan-document.ts";
import type { HandEdit } from "../planning/plan-edit.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";

/** A plan that a person made of another, ready to be stored. */
export function planByHand(
  { ids, clock }: Pick<Ports, "ids" | "clock">,
  { parent, edit }: { readonly parent: Pick<StoredPlan, "id" | "plantId">; readonly edit: HandEdit },
  document: PlanDocument,
): StoredPlan {
  const { engineVersion, seed, steps, summary } = document;
  return {
    id: ids.next(),
    plantId: parent.plantId,
    createdAt: clock.now(),
    engineVersion,
    seed,
    steps,
    runId: null,
    parentId: parent.id,
    edit,
    summary,
    document,
  };
}
