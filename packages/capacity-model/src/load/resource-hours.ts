import {
  compilePlantCalendars,
  lineStandstill,
  lineWorkingTime,
  mouldOutOfService,
  poolCrews,
  teamWorkingTime,
} from "../calendar/plant-calendars.ts";
import type { PlantCalendars } from "../calendar/plant-calendars.ts";
import type { TimeWindow } from "../calendar/compile-calendar.ts";
import type { WorkingTime } from "../calendar/working-time.ts";
import type { OperatorPool, SetterTeam } from "../plant/crew.ts";
import type { FormingLine } from "../plant/forming-line.ts";
import type { Mould } from "../plant/mould.ts";
import type { Plant } from "../plant/plant.ts";
import { WHOLE_UNIT } from "./resource-load.ts";
import type { ResourceHours, ResourceKind } from "./resource-load.ts";
import { spellsOfAmount, stepsOf } from "./steps.ts";
import type { Steps } from "./steps.ts";

/** Lines on which a mould can make something, by mould id. */
export type LinesOfMoulds = ReadonlyMap<string, ReadonlySet<string>>;

/** The hours that a plant's resources have in one window. */
export interface PlantHours {
  /** In the order of the plant's records. */
  readonly of: (kind: ResourceKind) => readonly ResourceHours[];
  /** Working time of a line, its closures taken off; never open for a line that is not known. */
  readonly line: (lineId: string) => WorkingTime;
  readonly team: (teamId: string) => WorkingTime;
}

const NEVER: WorkingTime = { starts: [], ends: [], workedBefore: [] };
const NO_STEPS: Steps = { at: [], value: [] };

/**
 * Hours of lines, moulds, setter teams and operator pools. A mould has no calendar: as many of its copies can work as lines
 * that it can make something on are open. Time of a line outside its calendar is closed; its own closures inside it, and
 * copies out of service, stand.
 */
export function plantHours(plant: Plant, window: TimeWindow, linesOfMoulds: LinesOfMoulds): PlantHours {
  const calendars = compilePlantCalendars(plant, window);
  const lines = new Map<string, LineHours>(
    plant.lines.map((line) => [line.id, lineHoursOf(plant, line, calendars)]),
  );
  const teams = new Map<string, WorkingTime>(
    plant.setterTeams.map((team) => [team.id, teamWorkingTime(team, calendars)]),
  );
  const openLines = new OpenLines(lines);
  const records = {
    line: () => plant.lines.map(({ id }) => hoursOfLine(id, lines.get(id) as LineHours)),
    mould: () => plant.moulds.map((mould) => hoursOfMould(plant, mould, openLines.of(linesOfMoulds, mould))),
    team: () => plant.setterTeams.map((team) => hoursOfTeam(team, teams.get(team.id) ?? NEVER)),
    pool: () => plant.operatorPools.map((pool) => hoursOfPool(pool, calendars)),
  };
  return {
    of: (kind) => records[kind](),
    line: (lineId) => lines.get(lineId)?.working ?? NEVER,
    team: (teamId) => teams.get(teamId) ?? NEVER,
  };
}

interface LineHours {
  /** Calendar and added shifts, closures of the line not taken off. */
  readonly calendar: WorkingTime;
  readonly working: WorkingTime;
  readonly standstill: WorkingTime;
}

function lineHoursOf(plant: Plant, line: FormingLine, calendars: PlantCalendars): LineHours {
  return {
    calendar: lineWorkingTime({ ...plant, lineClosures: [] }, line, calendars),
    working: lineWorkingTime(plant, line, calendars),
    standstill: lineStandstill(plant, line),
  };
}

function hoursOfLine(id: string, { calendar, standstill }: LineHours): ResourceHours {
  return {
    kind: "line",
    id,
    units: WHOLE_UNIT,
    open: stepsOf(spellsOfAmount(calendar, WHOLE_UNIT)),
    standing: stepsOf(spellsOfAmount(standstill, WHOLE_UNIT)),
  };
}

function hoursOfTeam({ id }: SetterTeam, time: WorkingTime): ResourceHours {
  const open = stepsOf(spellsOfAmount(time, WHOLE_UNIT));
  return { kind: "team", id, units: WHOLE_UNIT, open, standing: NO_STEPS };
}

function hoursOfPool(pool: OperatorPool, calendars: PlantCalendars): ResourceHours {
  const crews = poolCrews(pool, calendars);
  const open = stepsOf(
    crews.flatMap(({ workingTime, heads }) => spellsOfAmount(workingTime, Math.round(heads * WHOLE_UNIT))),
  );
  const units = open.value.reduce((most, heads) => Math.max(most, heads), 0);
  return { kind: "pool", id: pool.id, units, open, standing: NO_STEPS };
}

function hoursOfMould(plant: Plant, mould: Mould, openLines: Steps): ResourceHours {
  const units = mould.copies * WHOLE_UNIT;
  const away = mouldOutOfService(mould, plant.timeZone);
  return {
    kind: "mould",
    id: mould.id,
    units,
    open: { at: openLines.at, value: openLines.value.map((open) => Math.min(open, units)) },
    standing: stepsOf(away.map(({ start, end }) => ({ start, end, amount: WHOLE_UNIT }))),
  };
}

/** How many of a set of lines are open, over time; many moulds ask for the same. */
class OpenLines {
  readonly #lines: ReadonlyMap<string, LineHours>;
  readonly #known = new Map<string, Steps>();

  constructor(lines: ReadonlyMap<string, LineHours>) {
    this.#lines = lines;
  }

  of(linesOfMoulds: LinesOfMoulds, { id }: Mould): Steps {
    const lineIds = [...(linesOfMoulds.get(id) ?? [])].sort((a, b) => (a < b ? -1 : 1));
    const key = JSON.stringify(lineIds);
    const steps =
      this.#known.get(key) ??
      stepsOf(
        lineIds.flatMap((lineId) => spellsOfAmount(this.#lines.get(lineId)?.working ?? NEVER, WHOLE_UNIT)),
      );
    this.#known.set(key, steps);
    return steps;
  }
}
