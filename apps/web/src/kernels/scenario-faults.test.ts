import { describe, expect, it } from "vitest";
import { scenarioFaults } from "./scenario-faults.ts";

const fault = (path: string, problem: string) => ({ path, problem, remedy: "Correct it." });

describe("faults of a scenario", () => {
  it("stand at the field of the change that they name, the first of each field", () => {
    const { changes, name, others } = scenarioFaults([
      fault("changes.1.closure.to", "It ends before it begins."),
      fault("changes.1.closure.to", "It is past."),
      fault("changes.0.shift.lineIds.2", "No such line."),
      fault("changes.12", "Named twice."),
    ]);
    expect([...changes.keys()].sort((a, b) => a - b)).toEqual([0, 1, 12]);
    expect(changes.get(1)?.get("to")).toBe("It ends before it begins. Correct it.");
    expect(changes.get(0)?.get("lineIds")).toBe("No such line. Correct it.");
    expect(changes.get(12)?.get("")).toBe("Named twice. Correct it.");
    expect([name, others]).toEqual([null, []]);
  });

  it("of the name and of nothing in the form are told apart", () => {
    const { changes, name, others } = scenarioFaults([
      fault("name", "Too long."),
      fault("revision", "Missing."),
      fault("", "Nothing to read."),
    ]);
    expect(changes.size).toBe(0);
    expect(name).toBe("Too long. Correct it.");
    expect(others).toEqual(["revision: Missing. Correct it.", "Nothing to read. Correct it."]);
  });
});
