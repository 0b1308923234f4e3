import { Mould, SetterTeam } from "@formweek/capacity-model";
import type { RecordKind } from "@formweek/capacity-model";
import type { FieldFault } from "../errors.ts";
import { valueFault } from "../value-fault.ts";
import { changeFault, shownAt } from "./change-fault.ts";
import { productsOn } from "./cycle-rates.ts";
import { wholeMinute } from "./extra-team.ts";
import type { CycleRate, ExtraTeam, ScenarioChange } from "./scenario-change.ts";
import type { ScenarioGround } from "./scenario-ground.ts";

const DAY_SECONDS = 86_400;
/** A spell may be no longer, days. */
const LONGEST_SPELL = 366;
/** Slowest rate that is taken for one, cycles a minute. */
const LEAST_RATE = 0.1;
/** Fastest that the plant's records know. */
const MOST_RATE = 200;

const unknown = (path: string, to: RecordKind, id: string): FieldFault =>
  changeFault(
    path,
    { kind: "unknown reference", to, id },
    `"${id}" is no ${to} of this plant.`,
    `Choose a ${to} of the plant.`,
  );

/** What stands against more sets of a mould. */
export function copiesFaults(
  { mouldId, more }: Extract<ScenarioChange, { readonly kind: "more copies" }>,
  { snapshot: { plant } }: ScenarioGround,
): readonly FieldFault[] {
  const mould = plant.moulds.find(({ id }) => id === mouldId);
  if (mould === undefined) return [unknown("mouldId", "mould", mouldId)];
  const most = Mould.shape.copies.maxValue ?? Infinity;
  const { copies } = mould;
  if (copies + more <= most) return [];
  return [
    changeFault(
      "more",
      { kind: "too many copies", mouldId, copies, most },
      `Mould ${mouldId} has ${copies} ${copies === 1 ? "copy" : "copies"}; there can be ${most} at the most.`,
      copies < most ? `Add ${most - copies} at the most.` : "Leave the change out.",
    ),
  ];
}

/** What stands against one more setter team. */
export function teamFaults(
  { likeTeamId, name, from, to }: ExtraTeam,
  { snapshot: { plant }, horizon }: ScenarioGround,
): readonly FieldFault[] {
  const shown = (at: number): string => shownAt(plant.timeZone, at);
  const faults: FieldFault[] = [];
  if (!plant.setterTeams.some(({ id }) => id === likeTeamId))
    faults.push(unknown("likeTeamId", "setter team", likeTeamId));
  const named = SetterTeam.shape.name.safeParse(name);
  for (const issue of named.error?.issues ?? [])
    faults.push(
      changeFault(
        "name",
        valueFault({ ...issue }),
        `"${name}": ${issue.message}.`,
        "Give the team a name of 1 to 120 letters.",
      ),
    );
  if (wholeMinute(to) <= wholeMinute(from))
    faults.push(
      changeFault(
        "to",
        { kind: "ends before start", from: shown(from), to: shown(to) },
        `It ends at ${shown(to)}, not after its start at ${shown(from)}.`,
        "Let it end after its start.",
      ),
    );
  else if (to - from > LONGEST_SPELL * DAY_SECONDS)
    faults.push(
      changeFault(
        "to",
        { kind: "spell too long", mostDays: LONGEST_SPELL },
        `The spell is longer than ${LONGEST_SPELL} days.`,
        "Let it end earlier.",
      ),
    );
  else if (to <= horizon.start)
    faults.push(
      changeFault(
        "to",
        { kind: "over before plan", over: shown(to), planStart: shown(horizon.start) },
        `It is over at ${shown(to)}; the plan begins at ${shown(horizon.start)}.`,
        "Choose a time that the plan has still ahead.",
      ),
    );
  else if (from >= horizon.end)
    faults.push(
      changeFault(
        "from",
        { kind: "after plan", planEnd: shown(horizon.end) },
        `It lies after ${shown(horizon.end)}, where the plan ends.`,
        "Choose a time within the plan.",
      ),
    );
  return faults;
}

/** What stands against another rate of a mould on a line. */
export function rateFaults(
  { lineId, mouldId, cyclesPerMin }: CycleRate,
  { snapshot: { plant } }: ScenarioGround,
): readonly FieldFault[] {
  const line = plant.lines.find(({ id }) => id === lineId);
  const mould = plant.moulds.find(({ id }) => id === mouldId);
  if (line === undefined || mould === undefined)
    return [
      ...(line === undefined ? [unknown("lineId", "line", lineId)] : []),
      ...(mould === undefined ? [unknown("mouldId", "mould", mouldId)] : []),
    ];
  const most = Math.min(mould.maxCyclesPerMin, MOST_RATE);
  if (!(cyclesPerMin >= LEAST_RATE && cyclesPerMin <= most))
    return [
      changeFault(
        "cyclesPerMin",
        { kind: "rate out of range", least: LEAST_RATE, most },
        `${cyclesPerMin} cycles a minute is not between ${LEAST_RATE} and ${most}, the most that the mould allows.`,
        `Name a rate of ${LEAST_RATE} to ${most} cycles a minute.`,
      ),
    ];
  if (productsOn(plant, line, mould).length > 0) return [];
  return [
    changeFault(
      "mouldId",
      { kind: "mould not on line", mouldId, lineId },
      `Nothing can be made with mould ${mouldId} on ${line.name}.`,
      "Choose a line on which the mould runs.",
    ),
  ];
}
