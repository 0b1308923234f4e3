import type { ChangeoverRules } from "../plant/changeover-rules.ts";
import type { FormingLine } from "../plant/forming-line.ts";
import type { Polymer } from "../plant/polymer.ts";
import type { CrewTask } from "./crew-schedule.ts";
import type { LineState } from "./line-state.ts";

/** What a task does; one task of each kind at most in a change. */
export type ChangeTaskKind =
  | "mould out"
  | "mould in"
  | "insert out"
  | "insert in"
  | "stacker tooling"
  | "rim tooling"
  | "packing format"
  | "trim set"
  | "splice"
  | "sheet width"
  | "sheet thickness"
  | "polymer"
  | "colour"
  | "oven re-soak"
  | "mould heat-up"
  | "first-piece check";

/** A task with the words for the setter's sheet. */
export interface PlannedTask extends CrewTask {
  readonly key: ChangeTaskKind;
  readonly name: string;
}

/** Between which states of which line a change lies, and by which rules. */
export interface ChangeRequest {
  readonly from: LineState;
  readonly to: LineState;
  readonly line: FormingLine;
  readonly rules: ChangeoverRules;
  readonly polymers: readonly Polymer[];
  /** People of the team, >= 1. */
  readonly setters: number;
}

interface TaskManner {
  readonly byTeam?: boolean;
  readonly after?: readonly ChangeTaskKind[];
  readonly first?: boolean;
}

/** Done by a setter. */
export const SETTER: TaskManner = { byTeam: true };
/** What hangs on the line comes out first: it frees the mould for another line. */
export const SETTER_FIRST: TaskManner = { byTeam: true, first: true };

/** One task; minutes are rounded to whole seconds. */
export function task(
  key: ChangeTaskKind,
  name: string,
  minutes: number,
  manner: TaskManner = {},
): PlannedTask {
  return {
    key,
    name,
    seconds: Math.round(minutes * 60),
    byTeam: manner.byTeam ?? false,
    after: manner.after ?? [],
    first: manner.first ?? false,
  };
}
