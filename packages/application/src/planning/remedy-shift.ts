import { localTextAt, workingBetween } from "@formweek/capacity-model";
import type { ProblemEdit } from "@formweek/scheduler";
import { applyHours } from "./apply-hours.ts";
import { assembleProblem } from "./assemble-problem.ts";
import type { Assembled } from "./assembled.ts";
import { hoursFaults } from "./hours-faults.ts";
import type { HoursEdit, ShiftAdded } from "./plan-edit.ts";

type Staff = Pick<ShiftAdded, "lineIds" | "teamIds" | "operators">;

/** Who works in the hours that an edit adds; null where it adds none, or nobody of the plant is free to come. */
function staffOf({ plant, problem }: Assembled, edit: ProblemEdit): Staff | null {
  switch (edit.kind) {
    case "extra shift": {
      const line = plant.lines.find(({ id }) => id === edit.lineId);
      if (line === undefined) return null;
      const { operatorPoolId: poolId, operatorsNeeded: heads } = line;
      const operators = poolId === null || heads === 0 ? [] : [{ poolId, heads }];
      return { lineIds: [line.id], teamIds: [], operators };
    }
    case "extra operators":
      return { lineIds: [], teamIds: [], operators: [{ poolId: edit.poolId, heads: edit.hundredths / 100 }] };
    case "extra team": {
      const off = problem.teams.find((team) => workingBetween(team.workingTime, edit.from, edit.to) === 0);
      return off === undefined ? null : { lineIds: [], teamIds: [off.id], operators: [] };
    }
    default:
      return null;
  }
}

/** The hours that an edit adds, as a shift of the plant; null where it is another kind of edit or cannot be such a shift. */
export function shiftOfEdit(assembled: Assembled, edit: ProblemEdit): HoursEdit | null {
  const staff = staffOf(assembled, edit);
  if (staff === null || !("from" in edit)) return null;
  const { plant, problem } = assembled;
  const [from, to] = [localTextAt(plant.timeZone, edit.from), localTextAt(plant.timeZone, edit.to)];
  const shift: ShiftAdded = {
    date: from.slice(0, 10),
    name: "Extra shift",
    start: from.slice(11, 16),
    end: to.slice(11, 16),
    breaks: [],
    ...staff,
  };
  const hours: HoursEdit = { kind: "add shift", shift };
  return hoursFaults(hours, { plant, horizon: problem.horizon }).length === 0 ? hours : null;
}

/** The same inputs with a change of the plant's hours; what else is pinned in the problem stays so. */
export function withHours(
  { plant, demands, pins, stockShares, problem }: Assembled,
  hours: HoursEdit,
): Assembled {
  const orders = demands.map(({ order }) => order);
  const changed = assembleProblem({
    plant: applyHours(plant, hours),
    orders,
    pins,
    stockShares,
    now: problem.horizon.start,
  });
  return { ...changed, problem: { ...changed.problem, pins: problem.pins } };
}
