import { describe, expect, test } from "vitest";
import { type Actor, ROLES, localPlanner } from "./actor.ts";
import { authorise } from "./authorise.ts";

const withRole = (...grants: Actor["grants"]): Actor => ({ id: "a", name: "A", grants });

describe("authorise", () => {
  test.each(ROLES)("%s may do all that lesser roles may and nothing above", (role) => {
    const actor = withRole({ plants: { plantId: "p" }, role });
    const allowed = ROLES.filter((needed) => authorise(actor, "p", needed).ok);
    expect(allowed).toEqual(ROLES.slice(0, ROLES.indexOf(role) + 1));
  });

  test("the greatest of several grants counts, wherever it stands", () => {
    const actor = withRole(
      { plants: { plantId: "p" }, role: "manager" },
      { plants: "every plant", role: "viewer" },
    );
    expect(authorise(actor, "p", "manager").ok).toBe(true);
    expect(authorise(actor, "q", "viewer").ok).toBe(true);
    expect(authorise(actor, "q", "sales").ok).toBe(false);
  });

  test("without any role the plant is not found, with too small a one it is forbidden", () => {
    const actor = withRole({ plants: { plantId: "p" }, role: "viewer" });
    const elsewhere = authorise(actor, "q", "viewer");
    const above = authorise(actor, "p", "planner");
    expect(!elsewhere.ok && elsewhere.error.code).toBe("not-found");
    expect(!above.ok && above.error.code).toBe("forbidden");
  });

  test("a plant that is called like the word for every plant opens only itself", () => {
    const actor = withRole({ plants: { plantId: "every plant" }, role: "administrator" });
    expect(authorise(actor, "p", "viewer").ok).toBe(false);
  });

  test("the planner of one machine may do everything", () => {
    expect(authorise(localPlanner, "any", "administrator").ok).toBe(true);
  });
});
