import { spellsOf, subtractWorkingTime, workingBetween, workingTimeOf } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import type { ProblemEdit } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import { assembleProblem } from "./assemble-problem.ts";
import { shiftOfEdit, withHours } from "./remedy-shift.ts";

const assembled = assembleProblem({
  plant: demoPlant("calm"),
  orders: demoOrders("calm"),
  pins: [],
  now: 0,
});
const { plant, problem } = assembled;

/** The first four hours of the first spell in which a line or team does not work. */
function closedSpell(time: (typeof problem.lines)[number]["workingTime"]): { from: number; to: number } {
  const { start, end } = problem.horizon;
  const closed = spellsOf(subtractWorkingTime(workingTimeOf([[start, end]]), time));
  const [from, to] = closed.find(([a, b]) => b - a >= 4 * 3600) ?? [0, 0];
  expect(to - from).toBeGreaterThanOrEqual(4 * 3600);
  return { from, to: from + 4 * 3600 };
}

describe("hours that a remedy adds", () => {
  const line = problem.lines.find(({ workingTime }) => workingTime.starts.length > 1)!;
  const spell = closedSpell(line.workingTime);

  it("are a shift of the line and the operators that it needs, and the line works in just these hours more", () => {
    const hours = shiftOfEdit(assembled, { kind: "extra shift", lineId: line.id, ...spell });
    const record = plant.lines.find(({ id }) => id === line.id)!;
    const operators =
      record.operatorPoolId === null
        ? []
        : [{ poolId: record.operatorPoolId, heads: record.operatorsNeeded }];
    expect(hours).toMatchObject({ kind: "add shift", shift: { lineIds: [line.id], teamIds: [], operators } });
    const after = withHours(assembled, hours!).problem;
    const worked = (lines: typeof problem.lines, id: string): number =>
      workingBetween(lines.find((each) => each.id === id)!.workingTime, spell.from, spell.to);
    expect(worked(problem.lines, line.id)).toBe(0);
    expect(worked(after.lines, line.id)).toBe(4 * 3600);
    for (const other of problem.lines.filter(({ id }) => id !== line.id))
      expect(after.lines.find(({ id }) => id === other.id)?.workingTime).toEqual(other.workingTime);
    expect(after.horizon).toEqual(problem.horizon);
    expect(after.jobs).toEqual(problem.jobs);
  });

  it("are those of a team that is off then; where every team works there is nobody to come", () => {
    const [team] = problem.teams;
    const off = closedSpell(team!.workingTime);
    const hours = shiftOfEdit(assembled, { kind: "extra team", ...off });
    const comes = hours !== null && "shift" in hours ? hours.shift.teamIds : [];
    expect(comes).toHaveLength(1);
    const working = workingTimeOf([[off.from, off.to]]);
    const busy = {
      ...assembled,
      problem: { ...problem, teams: problem.teams.map((each) => ({ ...each, workingTime: working })) },
    };
    expect(shiftOfEdit(busy, { kind: "extra team", ...off })).toBeNull();
  });

  it("are none for what is no matter of hours, for a line that is not there, and where the records forbid the shift", () => {
    const none: readonly ProblemEdit[] = [
      { kind: "mould copy", mouldId: "any" },
      { kind: "extra shift", lineId: "nowhere", ...spell },
      { kind: "extra operators", poolId: "nowhere", hundredths: 100, ...spell },
    ];
    for (const edit of none) expect(shiftOfEdit(assembled, edit)).toBeNull();
  });
});
