import { existsSync, readFileSync } from "node:fs";

/** How many tests went which way. */
export interface TestCounts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** Counts of nothing run. */
export const NO_TESTS: TestCounts = { passed: 0, failed: 0, skipped: 0 };

/** The sum of two counts. */
export function addCounts(a: TestCounts, b: TestCounts): TestCounts {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/** `12 passed, 0 failed`, with the skipped ones named only when there are any. */
export function sayCounts(counts: TestCounts): string {
  const said = `${String(counts.passed)} passed, ${String(counts.failed)} failed`;
  return counts.skipped === 0 ? said : `${said}, ${String(counts.skipped)} skipped`;
}

interface VitestReport {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly unknown[] }[];
}

/** Counts of a vitest JSON report; a file that could not even be loaded is one failure. */
export function vitestCounts(file: string): TestCounts | undefined {
  const report = readReport<VitestReport>(file);
  if (report === undefined) return undefined;
  const broken = report.testResults.filter(
    (result) => result.status === "failed" && result.assertionResults.length === 0,
  ).length;
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + broken,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

interface PlaywrightReport {
  readonly stats: {
    readonly expected: number;
    readonly unexpected: number;
    readonly flaky: number;
    readonly skipped: number;
  };
}

/** Counts of a Playwright JSON report; a test that passed only at a second try has failed. */
export function playwrightCounts(file: string): TestCounts | undefined {
  const stats = readReport<PlaywrightReport>(file)?.stats;
  if (stats === undefined) return undefined;
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky, skipped: stats.skipped };
}

function readReport<Report>(file: string): Report | undefined {
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Report) : undefined;
}
