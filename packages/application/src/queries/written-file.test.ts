import { describe, expect, test } from "vitest";
import { fileDate, fileStem } from "./written-file.ts";

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

describe("a date in a file's name", () => {
  // 2026-11-30T23:30:59Z, by `date -u -d @1796081459`: already the next day in Berlin, one hour ahead in winter
  const at = 1_796_081_459;

  test("is the plant's day", () => {
    expect(fileDate("Europe/Berlin", at, "day")).toBe("2026-12-01");
    expect(fileDate("UTC", at, "day")).toBe("2026-11-30");
  });

  test("has the plant's clock to the minute where asked", () => {
    expect(fileDate("Europe/Berlin", at, "minute")).toBe("2026-12-01-0030");
  });
});
