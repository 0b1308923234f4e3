/** The sequences of parallel lines with their ends, and the questions that a search asks about them. Times are s, positions count from 0. */
export interface LineTimes {
  /** [line] orders on it */
  readonly length: Int32Array;
  /** [line] s */
  readonly end: Int32Array;
  /** Places judged so far, those that a bound ruled out included. */
  readonly judged: number;
  /** What the last `findPlace` found: line (-1: nothing) and position. */
  readonly placeLine: number;
  readonly placePosition: number;
  readonly orderAt: (line: number, position: number) => number;
  /** The place, of those that are not blinked at, where an order lets the smoothed ends grow least. */
  readonly findPlace: (order: number) => void;
  readonly insert: (line: number, position: number, order: number) => void;
  /** Takes `count` neighbours, the first at `position`, out of a line. */
  readonly remove: (line: number, position: number, count: number) => void;
  /** Moves single orders within a line to better places while that makes its end earlier. */
  readonly shorten: (line: number) => void;
  /** Remembers a line, for `restore`. */
  readonly keep: (line: number) => void;
  readonly restore: (line: number) => void;
}
