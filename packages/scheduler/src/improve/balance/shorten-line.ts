import type { LineFold } from "./line-fold.ts";

/** Moves single orders of one line to better places on it until none gains; the number of places judged. */
export function shortenLine(fold: LineFold, line: number): number {
  let judged = 0;
  let gained = true;
  for (let round = 0; gained && round < 3; round++) {
    gained = false;
    for (let p = 0; p < fold.length[line]!; p++) {
      const before = fold.end[line]!;
      const order = fold.rows[line]![p]!;
      fold.remove(line, p);
      let best = p;
      let shortest = before;
      const length = fold.length[line]!;
      for (let position = 0; position <= length; position++) {
        if (position === p) continue;
        const end = fold.endWith(line, position, order);
        if (end < shortest) {
          shortest = end;
          best = position;
        }
      }
      judged += length;
      fold.insert(line, best, order);
      if (best !== p) gained = true;
    }
  }
  return judged;
}
