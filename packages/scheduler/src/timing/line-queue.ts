import { NEVER } from "../problem/calendar.ts";
import { GIVING_WAY } from "./turns.ts";

/** Which line comes next: the one with the lowest key, the lower number on a tie. */
export class LineQueue {
  /** [line] s before which its next step cannot begin, or is not to be looked at; NEVER when it has none */
  readonly key: Int32Array;
  /** key of the line that was picked, and the lowest of the others */
  least = NEVER;
  second = NEVER;

  constructor(lines: number) {
    this.key = new Int32Array(lines);
  }

  /** A line that gave way until now, if it did, may go on from an instant. */
  goOn(line: number, at: number): void {
    if (this.key[line] === GIVING_WAY) this.key[line] = at;
  }

  /** The next line, or -1 when none has a step left. O(lines). */
  pick(): number {
    const { key } = this;
    let line = -1;
    let least = NEVER;
    let second = NEVER;
    for (let l = 0; l < key.length; l++) {
      const value = key[l]!;
      if (value < least) {
        second = least;
        least = value;
        line = l;
      } else if (value < second) second = value;
    }
    this.least = least;
    this.second = second;
    return line;
  }
}
