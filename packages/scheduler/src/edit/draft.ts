import type { Sequences } from "../timing/sequences.ts";
import type { EditSubject } from "./refusal.ts";

/** A line's position for an option of a lot. */
export interface OptionPlace {
  readonly option: number;
  readonly position: number;
}

/** What an edit comes to before it is timed. */
export interface Draft {
  readonly subject: EditSubject;
  /** After the edit, but for the lot that is to be placed; may be changed. */
  readonly sequences: Sequences;
  /** The lot to be placed and where it may stand, at least one place; null where all lots have their places. */
  readonly placed: { readonly lot: number; readonly places: readonly OptionPlace[] } | null;
  /** Orders that a person took out, after the edit. */
  readonly takenOut: ReadonlySet<string>;
}
