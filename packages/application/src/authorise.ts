import { type Actor, type Role, rankOf, roleIn } from "./actor.ts";
import { appError } from "./errors.ts";
import { plantNotFound } from "./not-found.ts";
import { type Result, ok, refused } from "./result.ts";

/** The one check of who may do what. Without any role in a plant the plant does not exist for the actor. */
export function authorise(actor: Actor, plantId: string, needed: Role): Result<null> {
  const role = roleIn(actor, plantId);
  if (role === null) return refused(plantNotFound(plantId));
  if (rankOf(role) >= rankOf(needed)) return ok(null);
  return refused(
    appError("forbidden", {
      title: "Your role does not allow this.",
      cause: `It takes the role "${needed}"; you are "${role}" in plant ${plantId}.`,
      remedy: `Ask an administrator of the plant, or a colleague who is ${needed}.`,
    }),
  );
}
