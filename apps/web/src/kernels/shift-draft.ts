import type { Plant } from "@formweek/capacity-model";
import type { ShiftAdded } from "@formweek/contracts";
import { spellsOf, type BoardPlan, type BoardSpell } from "./board-plan.ts";
import { gapsBetween } from "./culling.ts";
import { firstFreeShift, shiftSpell } from "./shift-offer.ts";
import { instantOfWallText, wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** A shift of the weekly pattern. */
export type ShiftPattern = Pick<ShiftAdded, "name" | "start" | "end" | "breaks">;

/** A shift as it is being put together; who comes is worked out until a person says otherwise. */
export interface ShiftDraft extends ShiftPattern {
  readonly date: string;
  readonly lineIds: readonly string[];
  /** Null: as is usual for these lines. */
  readonly teamIds: readonly string[] | null;
  /** Heads by pool, as typed; pools without an entry get the usual ones. */
  readonly heads: ReadonlyMap<string, string>;
}

export interface ShiftGround {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly clock: ZoneClock;
}

/** The shifts that the calendar of a line knows, each once. */
export function patternsOf(plant: Plant, lineId: string): readonly ShiftPattern[] {
  const calendarId = plant.lines.find(({ id }) => id === lineId)?.calendarId;
  const shifts = plant.calendars.find(({ id }) => id === calendarId)?.shifts ?? [];
  return shifts
    .map(({ name, start, end, breaks }) => ({ name, start, end, breaks }))
    .filter(
      (shift, place, all) =>
        all.findIndex(({ start, end }) => start === shift.start && end === shift.end) === place,
    );
}

/** The pattern that a draft keeps to; undefined where it has hours of its own. */
export function patternOf(
  patterns: readonly ShiftPattern[],
  { start, end }: Pick<ShiftDraft, "start" | "end">,
): ShiftPattern | undefined {
  return patterns.find((pattern) => pattern.start === start && pattern.end === end);
}

/** A shift on a day that the pattern of its line names. */
interface FreeShift {
  readonly date: string;
  readonly shift: ShiftPattern;
}

/** The first shift of the line's pattern in a time in which it neither works nor is closed; null: there is none. */
export function freeShift(
  { plan, plant, clock }: ShiftGround,
  lineId: string,
  within: BoardSpell,
): FreeShift | null {
  const open = plan.lines.find(({ id }) => id === lineId)?.open ?? [];
  const closures = plant.lineClosures
    .filter((closure) => closure.lineId === lineId)
    .map(({ from, to }) => ({
      start: instantOfWallText(clock, from) ?? 0,
      end: instantOfWallText(clock, to) ?? 0,
    }));
  return firstFreeShift(clock, patternsOf(plant, lineId), { open, closures, within });
}

/** A shift of a line as it is put together further. */
export function draftOfFree({ date, shift }: FreeShift, lineId: string): ShiftDraft {
  return { ...shift, date, lineIds: [lineId], teamIds: null, heads: new Map() };
}

/** The first free shift of the line in the time asked for, else in the plan; without one the pattern's first at the start. */
export function firstDraft(ground: ShiftGround, lineId: string, within: BoardSpell | null): ShiftDraft {
  const { plan, plant, clock } = ground;
  const whole = { start: plan.startAt, end: plan.knownEndAt };
  const asked = within ?? whole;
  const found = freeShift(ground, lineId, asked) ?? freeShift(ground, lineId, whole);
  return draftOfFree(
    found ?? {
      date: wallText(clock, asked.start).slice(0, 10),
      shift: patternsOf(plant, lineId)[0] ?? { name: "", start: "06:00", end: "14:00", breaks: [] },
    },
    lineId,
  );
}

/** A shift that was put together before, with just those who come to it. */
export function draftOfShift(shift: ShiftAdded, plant: Plant): ShiftDraft {
  const { date, name, start, end, breaks, lineIds, teamIds, operators } = shift;
  const heads = new Map(plant.operatorPools.map(({ id }) => [id as string, "0"]));
  for (const { poolId, heads: count } of operators) heads.set(poolId, `${count}`);
  return { date, name, start, end, breaks, lineIds, teamIds, heads };
}

/** Teams that come: as a person says, else the first one where no team works in the shift by its calendar. */
export function teamsOf(
  { plan, plant }: Omit<ShiftGround, "clock">,
  draft: ShiftDraft,
  spell: BoardSpell,
): readonly string[] {
  if (draft.teamIds !== null) return draft.teamIds;
  const isAnyThere = plan.document.teams.some((team) => worksAt(spellsOf(team.open), spell));
  return isAnyThere ? [] : plant.setterTeams.slice(0, 1).map(({ id }) => id);
}

/** True where some of the spell is working time. */
export function worksAt(open: readonly BoardSpell[], spell: BoardSpell): boolean {
  const closed = gapsBetween(open, spell.start, spell.end);
  return closed.reduce((sum, { start, end }) => sum + end - start, 0) < spell.end - spell.start;
}

/** Pools that the lines of a draft draw on, with the heads that they need there. */
export function poolsOf(
  plant: Plant,
  { lineIds }: Pick<ShiftDraft, "lineIds">,
): readonly { readonly id: string; readonly name: string; readonly needed: number }[] {
  return plant.operatorPools.flatMap(({ id, name }) => {
    const lines = plant.lines.filter(
      (line) => line.operatorPoolId === id && line.operatorsNeeded > 0 && lineIds.includes(line.id),
    );
    const needed = lines.reduce((sum, line) => sum + line.operatorsNeeded, 0);
    return lines.length === 0 ? [] : [{ id, name, needed: Math.round(needed * 100) / 100 }];
  });
}

/** The shift that is asked for; null while day or times are missing. */
export function shiftOfDraft(ground: ShiftGround, draft: ShiftDraft, unnamed: string): ShiftAdded | null {
  const spell = shiftSpell(ground.clock, draft.date, draft);
  if (spell === null) return null;
  const operators = poolsOf(ground.plant, draft).flatMap(({ id: poolId, needed }) => {
    const heads = Number(draft.heads.get(poolId) ?? needed);
    return heads > 0 ? [{ poolId, heads }] : [];
  });
  const { date, start, end, breaks, lineIds } = draft;
  const name = draft.name === "" ? unnamed : draft.name;
  const teamIds = teamsOf(ground, draft, spell);
  return {
    date,
    name,
    start,
    end,
    breaks: [...breaks],
    lineIds: [...lineIds],
    teamIds: [...teamIds],
    operators,
  };
}
