import type { Polymer } from "../plant/polymer.ts";
import { changeTasks, isInsertExchange, isMouldExchange } from "./change-tasks.ts";
import { scheduleCrew } from "./crew-schedule.ts";
import { setupIdentity, strippedState } from "./line-state.ts";
import type { LineState } from "./line-state.ts";
import type { ChangeRequest, ChangeTaskKind } from "./planned-task.ts";

/** One line of the setter's sheet. Seconds count from the start of the change. */
export interface ChangeoverTask {
  readonly kind: ChangeTaskKind;
  readonly name: string;
  readonly minutes: number;
  /** Done by setters; otherwise thermal or operator work beside them. */
  readonly byTeam: boolean;
  readonly startSeconds: number;
  readonly endSeconds: number;
}

/**
 * A change of a line from one state to another. It runs in three phases without a pause: `dismountSeconds` until the old
 * mould is off, `mountSeconds` until the team is done, `tailSeconds` of thermal work and first-piece check without a team.
 */
export interface Changeover {
  readonly dismountSeconds: number;
  readonly mountSeconds: number;
  readonly tailSeconds: number;
  /** The line stands so long: dismount + mount + tail. */
  readonly machineSeconds: number;
  /** The team is bound so long: dismount + mount. */
  readonly teamSeconds: number;
  /** Work of all setters added up; less than teamSeconds × setters where someone waits. */
  readonly setterSeconds: number;
  readonly usesTrolley: boolean;
  /** Sheet thrown away until the first good piece, kg. */
  readonly scrapKg: number;
  /** In working order; tasks that take no time are left out. */
  readonly tasks: readonly ChangeoverTask[];
}

/**
 * The change between two states of a line; null when they do not differ. Mechanical tasks are shared among the setters,
 * thermal ones run beside them, so the change lasts as long as its longest path, not the sum of its tasks.
 */
export function changeBetween(request: ChangeRequest): Changeover | null {
  const { from, to, line, setters } = request;
  if (setupIdentity(from) === setupIdentity(to)) return null;
  const placed = scheduleCrew(changeTasks(request), setters);
  const dismountSeconds = latestEnd(
    placed.filter(({ task }) => task.key === "mould out" || task.key === "insert out"),
  );
  const teamSeconds = latestEnd(placed.filter(({ task }) => task.byTeam));
  const machineSeconds = latestEnd(placed);
  return {
    dismountSeconds,
    mountSeconds: teamSeconds - dismountSeconds,
    tailSeconds: machineSeconds - teamSeconds,
    machineSeconds,
    teamSeconds,
    setterSeconds: placed.reduce((sum, { task }) => sum + (task.byTeam ? task.seconds : 0), 0),
    usesTrolley: line.trolleyId !== null && isMouldExchange(request),
    scrapKg: startUpScrapKg(request),
    tasks: placed
      .filter(({ task }) => task.seconds > 0)
      .map(({ task, startSeconds, endSeconds }) => ({
        kind: task.key,
        name: task.name,
        minutes: task.seconds / 60,
        byTeam: task.byTeam,
        startSeconds,
        endSeconds,
      })),
  };
}

/** Taking the mould out of a line that goes on idle: dismounting alone. Null when none hangs there. */
export function strippingChange(request: Omit<ChangeRequest, "to">): Changeover | null {
  return request.from.mould === null ? null : changeBetween({ ...request, to: strippedState(request.from) });
}

/** Start-up cycles of the change × the mass of one shot, kg; a mould or insert change counts before a sheet change. */
function startUpScrapKg(request: ChangeRequest): number {
  const { from, to, rules, polymers } = request;
  if (to.mould === null || to.sheet === null) return 0;
  const mouldCycles =
    isMouldExchange(request) || isInsertExchange(request) ? rules.startUpScrapCyclesMould : 0;
  const sheetCycles = from.sheet?.id === to.sheet.id ? 0 : rules.startUpScrapCyclesSheet;
  return Math.max(mouldCycles, sheetCycles) * shotMassOfState(to, polymers);
}

/** kg of sheet that one cycle draws in: advance × width × thickness × density; 0 where the polymer is not known. */
function shotMassOfState({ mould, sheet }: LineState, polymers: readonly Polymer[]): number {
  const density = polymers.find((polymer) => polymer.name === sheet?.polymer)?.densityKgPerM3 ?? 0;
  if (mould === null || sheet === null) return 0;
  return (mould.indexLengthMm * sheet.widthMm * sheet.thicknessMm * density) / 1e9;
}

function latestEnd(placed: readonly { readonly endSeconds: number }[]): number {
  return placed.reduce((latest, { endSeconds }) => Math.max(latest, endSeconds), 0);
}
