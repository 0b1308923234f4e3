import { localPlanner } from "@formweek/application";
import { describe, expect, it } from "vitest";
import { namedPlanner } from "./named-planner.ts";
import { Refusal } from "./refusal.ts";

const planner = (name: string) => namedPlanner({ headers: { "x-planner-name": name } });

describe("the name of a planner on this machine", () => {
  it("is this machine's without one", () => {
    expect(namedPlanner({ headers: {} })).toEqual(localPlanner);
  });

  it("is told as sent, and gives no other rights", () => {
    const { id, name, grants } = planner(encodeURIComponent("Zoë, Schicht 2 <b>"));
    expect({ id, name }).toEqual({ id: "local:Zoë, Schicht 2 <b>", name: "Zoë, Schicht 2 <b>" });
    expect(grants).toEqual(localPlanner.grants);
  });

  it("counts characters, not units: forty of them are taken, forty-one are not", () => {
    expect(planner(encodeURIComponent("🧵".repeat(40))).name).toBe("🧵".repeat(40));
    expect(() => planner(encodeURIComponent("🧵".repeat(41)))).toThrow(Refusal);
  });

  it.each(["", " ", "%", "%ff", " a", "a%0Ab", "a%E2%80%AEb", "%E2%80%A8"])(
    "refuses %j with a remedy",
    (sent) => {
      expect.assertions(3);
      try {
        planner(sent);
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal);
        const [fault] = (error as Refusal).problem.faults;
        expect(fault?.path).toBe("x-planner-name");
        expect(fault?.remedy).toContain("1 to 40");
      }
    },
  );
});
