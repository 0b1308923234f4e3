import { describe, expect, it } from "vitest";
import { finish, finishUnless, type Work } from "./work.ts";

/** Work of so many pieces with a pause after each; `done` tells how many were made. */
function pieces(count: number): { readonly work: Work<string>; readonly done: () => number } {
  let made = 0;
  function* make(): Work<string> {
    for (let piece = 0; piece < count; piece++) {
      made++;
      yield;
    }
    return `${made} made`;
  }
  return { work: make(), done: () => made };
}

/** A question that is answered yes from the k-th time on. */
function yesFrom(k: number): () => boolean {
  let asks = 0;
  return () => ++asks >= k;
}

describe("work that pauses", () => {
  it("is done to its end where nobody may give it up", () => {
    expect(finish(pieces(4).work)).toBe("4 made");
  });
  it("goes on no further once it is given up, at whatever pause", () => {
    for (let k = 1; k <= 5; k++) {
      const { work, done } = pieces(4);
      expect(finishUnless(yesFrom(k), work)).toBeNull();
      expect(done()).toBe(k - 1);
    }
  });
  it("is done to its end when the answer comes too late", () => {
    expect(finishUnless(yesFrom(6), pieces(4).work)).toBe("4 made");
  });
});
