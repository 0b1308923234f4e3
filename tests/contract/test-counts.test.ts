/** The closing line of `npm test` is believed by people and by CI: what it counts is itself tested. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { failedTests } from "../services/failed-tests.ts";
import { addCounts, NO_TESTS, playwrightCounts, sayCounts, vitestCounts } from "../services/test-counts.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "formweek-counts-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

function reportFile(name: string, report: unknown): string {
  const file = join(folder, name);
  writeFileSync(file, JSON.stringify(report));
  return file;
}

describe("counts of a vitest report", () => {
  const tests = { numPassedTests: 4, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 };

  test("are its passed, failed and skipped tests", () => {
    const testResults = [{ status: "failed", assertionResults: [{}] }];
    const file = reportFile("plain.json", { ...tests, testResults });
    expect(vitestCounts(file)).toEqual({ passed: 4, failed: 1, skipped: 3 });
  });

  test("hold a file that could not be loaded as a failure", () => {
    const testResults = [{ status: "failed", assertionResults: [] }];
    const file = reportFile("broken.json", { ...tests, testResults });
    expect(vitestCounts(file)).toEqual({ passed: 4, failed: 2, skipped: 3 });
  });

  test("are unknown when no report was written", () => {
    expect(vitestCounts(join(folder, "missing.json"))).toBeUndefined();
  });
});

test("failed tests, and files that could not be loaded, are named with what they said", () => {
  const testResults = [
    {
      name: "a.test.ts",
      status: "failed",
      message: "",
      assertionResults: [
        { fullName: "adds", status: "passed", failureMessages: [] },
        { fullName: "subtracts", status: "failed", failureMessages: ["expected 1 to be 2"] },
      ],
    },
    { name: "b.test.ts", status: "failed", message: "no such module", assertionResults: [] },
  ];
  expect(failedTests(reportFile("named.json", { testResults }))).toEqual([
    "a.test.ts > subtracts\nexpected 1 to be 2",
    "b.test.ts\nno such module",
  ]);
  expect(failedTests(join(folder, "missing.json"))).toEqual([]);
});

test("a browser test that passed only at a second try counts as failed", () => {
  const file = reportFile("browser.json", { stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 2 } });
  expect(playwrightCounts(file)).toEqual({ passed: 3, failed: 2, skipped: 2 });
});

describe("the closing line", () => {
  test("sums up and leaves out what is not there", () => {
    const sum = addCounts({ passed: 2, failed: 0, skipped: 0 }, { passed: 1, failed: 1, skipped: 0 });
    expect(sayCounts(sum)).toBe("3 passed, 1 failed");
    expect(sayCounts(NO_TESTS)).toBe("0 passed, 0 failed");
  });

  test("names skipped tests when there are any", () => {
    expect(sayCounts({ passed: 2, failed: 0, skipped: 5 })).toBe("2 passed, 0 failed, 5 skipped");
  });
});
