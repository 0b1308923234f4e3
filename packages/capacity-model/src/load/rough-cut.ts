import { subtractWorkingTime } from "../calendar/working-sets.ts";
import { workingBetween } from "../calendar/working-time.ts";
import type { WorkingTime } from "../calendar/working-time.ts";
import type { TimeWindow } from "../calendar/compile-calendar.ts";
import { WHOLE_UNIT } from "./resource-load.ts";

const WEEK_SECONDS = 7 * 86_400;

/** A line on which an order could be made, and what it would take there. */
export interface RoughOption {
  readonly lineId: string;
  readonly mouldId: string;
  readonly secondsPerPiece: number;
  /** Expected change before the run: the line stands so long, a setter team is bound so long. */
  readonly changeSeconds: number;
  readonly teamSeconds: number;
}

/** What is left to make of one order that has no place in the plan. */
export interface RoughDemand {
  readonly orderId: string;
  readonly pieces: number;
  /** The last piece must be formed by then. */
  readonly readyBy: number;
  /** Nothing of it runs before; null: as soon as wanted. */
  readonly earliestStartAt: number | null;
  /** At most one a line. */
  readonly options: readonly RoughOption[];
}

/** Hours of a line or team: all in which it can work, and those that the plan takes of them. */
export interface RoughHours {
  readonly id: string;
  readonly workingTime: WorkingTime;
  readonly planned: WorkingTime;
}

export interface RoughCutInput {
  readonly demands: readonly RoughDemand[];
  readonly lines: readonly RoughHours[];
  readonly teams: readonly RoughHours[];
  readonly window: TimeWindow;
}

/** The part of an order that falls to one line, spread evenly over `over` within [from, to) of its placement. */
export interface RoughPart {
  readonly lineId: string;
  readonly mouldId: string;
  /** Share of the order's pieces, 0 to 1; the shares of an order add up to 1. */
  readonly share: number;
  /** Pieces to form, as a mean. */
  readonly pieces: number;
  /** Seconds × hundredths of a line. */
  readonly run: number;
  readonly change: number;
  readonly over: WorkingTime;
}

export interface RoughTeamPart {
  readonly teamId: string;
  readonly change: number;
  readonly over: WorkingTime;
}

export interface RoughPlacement {
  readonly orderId: string;
  readonly from: number;
  readonly to: number;
  readonly parts: readonly RoughPart[];
  readonly teams: readonly RoughTeamPart[];
}

export interface RoughCut {
  readonly placements: readonly RoughPlacement[];
  /** Orders that load nothing: no line can make them, or none of those works before they are due. */
  readonly unplaced: readonly { readonly orderId: string; readonly reason: "no line" | "no hours" }[];
}

/**
 * Loads orders roughly, without looking for a place: an order is spread over the lines that can make it in proportion to the
 * hours that the plan leaves them, and on each evenly over the week before it must be made, or over more whole weeks back
 * from there where its lines have less time than it takes; where even that is too little, it is laid over their planned hours
 * too. What is overdue lies in the first week. Lines are not filled up: more work than hours is what the reader wants to see. Orders to be ready after the window are left out.
 * (Rough-cut capacity planning: hours needed = Σ quantity ÷ rate + set-ups against hours there; the way of spreading is ours.)
 */
export function roughCut({ demands, lines, teams, window }: RoughCutInput): RoughCut {
  const hours = new Map(lines.map((line) => [line.id, spreadHours(line)]));
  const crews = teams.map((team) => spreadHours(team));
  const placements: RoughPlacement[] = [];
  const unplaced: { orderId: string; reason: "no line" | "no hours" }[] = [];
  for (const demand of demands) {
    if (demand.readyBy > window.end || demand.pieces <= 0) continue;
    const offers = demand.options.flatMap((option) => {
      const line = hours.get(option.lineId);
      return line === undefined ? [] : [{ option, line }];
    });
    const placed = offers.length === 0 ? null : placeOf(demand, offers, window);
    if (placed === null)
      unplaced.push({ orderId: demand.orderId, reason: offers.length === 0 ? "no line" : "no hours" });
    else placements.push({ ...placed, teams: teamParts(placed, demand, crews) });
  }
  return { placements, unplaced };
}

interface SpreadHours {
  readonly id: string;
  readonly all: WorkingTime;
  /** What the plan leaves of them. */
  readonly free: WorkingTime;
}

const spreadHours = ({ id, workingTime, planned }: RoughHours): SpreadHours => ({
  id,
  all: workingTime,
  free: subtractWorkingTime(workingTime, planned),
});

interface Offer {
  readonly option: RoughOption;
  readonly line: SpreadHours;
}

const secondsOn = ({ pieces }: RoughDemand, { secondsPerPiece, changeSeconds }: RoughOption): number =>
  pieces * secondsPerPiece + changeSeconds;

function placeOf(
  demand: RoughDemand,
  offers: readonly Offer[],
  window: TimeWindow,
): Omit<RoughPlacement, "teams"> | null {
  const floor = Math.max(window.start, demand.earliestStartAt ?? window.start);
  const to = Math.min(demand.readyBy > floor ? demand.readyBy : floor + WEEK_SECONDS, window.end);
  for (let from = to - WEEK_SECONDS; ; from -= WEEK_SECONDS) {
    const start = Math.max(from, floor);
    const split = splitOver(offers, "free", start, to);
    if (isEnough(split, demand)) return placed(demand, split, start, to);
    if (start > floor) continue;
    const crowded = splitOver(offers, "all", start, to);
    return crowded.length === 0 ? null : placed(demand, crowded, start, to);
  }
}

function isEnough(split: readonly Split[], demand: RoughDemand): boolean {
  const there = split.reduce((sum, { seconds }) => sum + seconds, 0);
  const needed = split.reduce((sum, { share, option }) => sum + share * secondsOn(demand, option), 0);
  return there > 0 && there >= needed;
}

function placed(
  { orderId, pieces }: RoughDemand,
  split: readonly Split[],
  from: number,
  to: number,
): Omit<RoughPlacement, "teams"> {
  const parts = split.map(({ share, option, over }): RoughPart => ({
    lineId: option.lineId,
    mouldId: option.mouldId,
    share,
    pieces: share * pieces,
    run: Math.round(WHOLE_UNIT * share * pieces * option.secondsPerPiece),
    change: Math.round(WHOLE_UNIT * share * option.changeSeconds),
    over,
  }));
  return { orderId, from, to, parts };
}

interface Split {
  readonly option: RoughOption;
  readonly over: WorkingTime;
  readonly seconds: number;
  readonly share: number;
}

/** Lines with hours in [from, to), of what the plan leaves or of all, and their shares of these hours. */
function splitOver(
  offers: readonly Offer[],
  which: "free" | "all",
  from: number,
  to: number,
): readonly Split[] {
  const split = offers
    .map(({ option, line }) => ({
      option,
      over: line[which],
      seconds: workingBetween(line[which], from, to),
    }))
    .filter(({ seconds }) => seconds > 0);
  const sum = split.reduce((total, { seconds }) => total + seconds, 0);
  return split.map((part) => ({ ...part, share: part.seconds / sum }));
}

/** Setters' work of a placed order, over the teams in proportion to their hours; no team with hours, no load. */
function teamParts(
  { from, to, parts }: Omit<RoughPlacement, "teams">,
  { options }: RoughDemand,
  crews: readonly SpreadHours[],
): readonly RoughTeamPart[] {
  const seconds = parts.reduce((sum, { lineId, share }) => {
    const option = options.find((each) => each.lineId === lineId);
    return sum + share * (option?.teamSeconds ?? 0);
  }, 0);
  const split = crews
    .map(({ id, all }) => ({ id, over: all, hours: workingBetween(all, from, to) }))
    .filter(({ hours }) => hours > 0);
  const sum = split.reduce((total, { hours }) => total + hours, 0);
  return split.map(({ id, over, hours }) => ({
    teamId: id,
    change: Math.round((WHOLE_UNIT * seconds * hours) / sum),
    over,
  }));
}
