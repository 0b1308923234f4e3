/** Roles of a person in a plant, each able to do all that the ones before it can. */
export const ROLES = ["viewer", "sales", "planner", "manager", "administrator"] as const;
export type Role = (typeof ROLES)[number];

/** A role in one plant, or in every plant ("every plant" is a word of its own, so that no plant id can mean it). */
export interface Grant {
  readonly plants: "every plant" | { readonly plantId: string };
  readonly role: Role;
}

/** Who asks. */
export interface Actor {
  readonly id: string;
  readonly name: string;
  readonly grants: readonly Grant[];
}

/** The one person of a planner that runs on one machine. */
export const localPlanner: Actor = {
  id: "local",
  name: "This machine",
  grants: [{ plants: "every plant", role: "administrator" }],
};

/** Place of a role in the order of roles, 0 for the least. */
export function rankOf(role: Role): number {
  return ROLES.indexOf(role);
}

/** The greatest role of the actor in a plant; null when there is none. */
export function roleIn(actor: Actor, plantId: string): Role | null {
  let best: Role | null = null;
  for (const grant of actor.grants) {
    const holds = grant.plants === "every plant" || grant.plants.plantId === plantId;
    if (holds && (best === null || rankOf(grant.role) > rankOf(best))) best = grant.role;
  }
  return best;
}
