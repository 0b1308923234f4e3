import { describe, expect, test } from "vitest";
import { fileStem } from "./export-records.ts";

describe("a file's name from an id", () => {
  test.each([
    ["ellerwade", "ellerwade"],
    ["Plant 7/ä", "Plant-7-"],
    ["../../etc", "etc"],
    ['a"; b=c', "a-b-c"],
    ["...", "plant"],
    ["日本", "plant"],
  ])("%s → %s", (id, stem) => expect(fileStem(id)).toBe(stem));
});
