import type { ResourceLoad } from "@formweek/capacity-model";
import { describe, expect, test } from "vitest";
import { loadTable } from "./load-table.ts";

const HOUR = 3600 * 100;
const load: ResourceLoad = {
  run: 10 * HOUR,
  change: 2 * HOUR,
  stop: HOUR,
  idle: 3 * HOUR,
  closed: 8 * HOUR,
  committed: 12 * HOUR,
  available: 3 * HOUR,
  unattainable: 9 * HOUR,
  total: 24 * HOUR,
  overload: 0,
  outside: HOUR / 2,
  share: 0.8,
  basis: "both",
};
const start = Date.UTC(2026, 11, 1) / 1000;
const bucket = { label: "2026-12-01", start, end: start + 86_400 };
const hours = {
  kind: "line",
  id: "L1",
  units: 100,
  open: { at: [], value: [] },
  standing: { at: [], value: [] },
} as const;

const tableOf = (loads: readonly ResourceLoad[]) =>
  loadTable({
    view: { rows: [{ hours, loads }], buckets: [bucket] },
    kind: "line",
    timeZone: "UTC",
    names: new Map([["L1", "Line 1"]]),
    language: "en",
  });

describe("load as a table", () => {
  test("has one row a resource and bucket, in hours", () => {
    const [header = [], row = []] = tableOf([load]).rows;
    const cells = Object.fromEntries(
      header.map((title, at) => [typeof title === "string" ? title : "", row[at]]),
    );
    expect(cells).toMatchObject({
      resource: "L1",
      "resource name": "Line 1",
      units: 1,
      basis: "both",
      "run h": 10,
      "committed h": 12,
      "available h": 3,
      "unattainable h": 9,
      "total h": 24,
      "outside hours h": 0.5,
      "load %": 80,
      start: { kind: "date", wallClock: "2026-12-01T00:00:00" },
    });
  });

  test("leaves the load empty where nothing can be worked, and has a header without rows", () => {
    const [header = [], row = []] = tableOf([{ ...load, share: null }]).rows;
    expect(row[header.indexOf("load %")]).toBeNull();
    expect(tableOf([]).rows).toHaveLength(1);
  });
});
