import { samePacking } from "./line-state.ts";
import type { LineState } from "./line-state.ts";
import { SETTER, SETTER_FIRST, task } from "./planned-task.ts";
import type { ChangeRequest, ChangeTaskKind, PlannedTask } from "./planned-task.ts";
import { mouldClassFor } from "./rules-for-line.ts";
import { sheetTasks } from "./sheet-tasks.ts";

/**
 * Tasks of a change in working order, those that the rules give no time included. Moulds of one family share their base, so between
 * them only the insert set is changed, and the base stays warm. The trim is set after every change of mould or insert.
 */
export function changeTasks(request: ChangeRequest): readonly PlannedTask[] {
  const work = [...mouldTasks(request), ...toolingTasks(request), ...sheetTasks(request)];
  const touchesForming = request.to.mould !== null && work.some((task) => !BESIDE_FORMING.has(task.key));
  const check = task("first-piece check", "Check first pieces", request.rules.firstPieceCheckMinutes, {
    after: work.map(({ key }) => key),
  });
  return touchesForming ? [...work, check] : work;
}

/** True where the mould itself leaves or enters the line, base and all. */
export function isMouldExchange({ from, to }: Pick<ChangeRequest, "from" | "to">): boolean {
  return from.mould?.id !== to.mould?.id && !isInsertExchange({ from, to });
}

/** True where only the insert set on the same base is changed. */
export function isInsertExchange({ from, to }: Pick<ChangeRequest, "from" | "to">): boolean {
  if (from.mould === null || to.mould === null) return false;
  if (from.mould.id === to.mould.id) return from.insertId !== to.insertId;
  return from.mould.family === to.mould.family;
}

/** Work at the stacker and packing end, which leaves the formed piece as it was. */
const BESIDE_FORMING: ReadonlySet<ChangeTaskKind> = new Set(["stacker tooling", "packing format"]);

function mouldTasks(request: ChangeRequest): readonly PlannedTask[] {
  const { from, to, rules, line } = request;
  const tasks: PlannedTask[] = [];
  if (isInsertExchange(request)) {
    // Another mould's insert set leaves before the new one comes; the half keeps the rules' minutes for the whole.
    const other = from.mould?.id !== to.mould?.id;
    const half = rules.insertChangeMinutes / 2;
    if (other)
      tasks.push(task("insert out", `Take out insert set of ${from.mould?.name}`, half, SETTER_FIRST));
    tasks.push(
      task("insert in", `Fit insert set for ${to.mould?.name}${insertWords(to)}`, other ? half : half * 2, {
        byTeam: true,
        after: ["insert out"],
      }),
    );
  } else if (isMouldExchange(request)) {
    const extra = line.loadingSide === "drive side" ? rules.driveSideExtraMinutes : 0;
    if (from.mould !== null) {
      const minutes = mouldClassFor(rules, from.mould.massKg).dismountMinutes + extra;
      tasks.push(task("mould out", `Take out mould ${from.mould.name}`, minutes, SETTER_FIRST));
    }
    if (to.mould !== null) {
      const minutes = mouldClassFor(rules, to.mould.massKg).mountMinutes + extra;
      tasks.push(
        task("mould in", `Mount mould ${to.mould.name}${insertWords(to)}`, minutes, {
          byTeam: true,
          after: ["mould out"],
        }),
      );
      if (!to.mould.preheatable) {
        tasks.push(
          task("mould heat-up", `Heat up mould ${to.mould.name}`, to.mould.heatUpMinutes, {
            after: ["mould in"],
          }),
        );
      }
    }
  }
  if (to.mould !== null && tasks.length > 0) {
    tasks.push(
      task("trim set", "Set the trim", rules.trimSetMinutes, {
        byTeam: true,
        after: ["mould in", "insert in"],
      }),
    );
  }
  return tasks;
}

function toolingTasks({ from, to, rules }: ChangeRequest): readonly PlannedTask[] {
  const tasks: PlannedTask[] = [];
  if (to.stackerTooling !== null && to.stackerTooling !== from.stackerTooling) {
    tasks.push(
      task(
        "stacker tooling",
        `Fit stacker tooling ${to.stackerTooling}`,
        rules.stackerToolingMinutes,
        SETTER,
      ),
    );
  }
  if (to.rimTooling !== null && to.rimTooling !== from.rimTooling) {
    tasks.push(task("rim tooling", `Fit rim tooling ${to.rimTooling}`, rules.rimToolingMinutes, SETTER));
  }
  if (to.packing !== null && (from.packing === null || !samePacking(from.packing, to.packing))) {
    const { piecesPerStack, stacksPerCarton } = to.packing;
    const words = `Set packing to ${piecesPerStack} a stack, ${stacksPerCarton} stacks a carton`;
    tasks.push(task("packing format", words, rules.packingFormatMinutes, SETTER));
  }
  return tasks;
}

function insertWords(state: LineState): string {
  return state.insertId === null ? "" : `, insert ${state.insertId}`;
}
