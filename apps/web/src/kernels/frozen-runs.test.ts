import type { PlanDocument } from "@formweek/contracts";
import { expect, test } from "vitest";
import { frozenUntil, runsBefore } from "./frozen-runs.ts";

const instant = (text: string): number => Date.parse(text) / 1000;
const plan = { horizon: { start: "2026-11-30T05:00:00Z", end: "2026-12-02T05:00:00Z" } };
const before = instant("2026-11-27T00:00:00Z");

test("what is frozen ends so many days after the plan's start, and with the plan at the latest", () => {
  expect(frozenUntil(plan, "nothing", before)).toBeNull();
  expect(frozenUntil(plan, "day", before)).toBe(instant("2026-12-01T05:00:00Z"));
  expect(frozenUntil(plan, "twoDays", before)).toBe(instant("2026-12-02T05:00:00Z"));
  expect(frozenUntil(plan, "fiveDays", before)).toBe(instant("2026-12-02T05:00:00Z"));
});

test("in a plan that has begun it counts from the next whole hour", () => {
  expect(frozenUntil(plan, "day", instant("2026-11-30T09:10:00Z"))).toBe(instant("2026-12-01T10:00:00Z"));
  expect(frozenUntil(plan, "day", instant("2026-11-30T10:00:00Z"))).toBe(instant("2026-12-01T10:00:00Z"));
});

test("runs that start before an instant are counted, those that start at it are not", () => {
  const lots = ["2026-11-30T05:00:00Z", "2026-12-01T04:59:59Z", "2026-12-01T05:00:00Z"].map((start) => ({
    start,
  })) as PlanDocument["lots"];
  expect(runsBefore({ lots }, instant("2026-12-01T05:00:00Z"))).toBe(2);
});
