/**
 * `npm test`: installs what the suites need where it may, starts the servers, runs every suite, and ends with
 * one line that sums them up. The exit code is 0 only when nothing failed and no runner broke down.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromiumProgram } from "./services/browser.ts";
import { provisionDebianPackages } from "./services/debian-packages.ts";
import { failedTests } from "./services/failed-tests.ts";
import { postgresPrograms } from "./services/postgres-server.ts";
import { REDIS_PROGRAM } from "./services/redis-server.ts";
import {
  addCounts,
  NO_TESTS,
  playwrightCounts,
  sayCounts,
  vitestCounts,
  type TestCounts,
} from "./services/test-counts.ts";
import { startTestServers } from "./services/test-servers.ts";

const root = join(import.meta.dirname, "..");
const reports = mkdtempSync(join(tmpdir(), "formweek-reports-"));

/** Said again at the end, where they are found in a long output; the browser suite's runner says its own. */
const failures: string[] = [];

interface Suite {
  readonly name: string;
  readonly command: readonly string[];
  readonly report: string;
  readonly count: (file: string) => TestCounts | undefined;
}

function vitestSuite(name: string, projects: readonly string[]): Suite {
  const report = join(reports, `${projects.join("-")}.json`);
  const command = ["vitest", "run", "--passWithNoTests", ...projects.flatMap((p) => ["--project", p])];
  const output = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  return { name, command: [...command, ...output], report, count: vitestCounts };
}

const browserSuite: Suite = {
  name: "browser",
  command: [
    "playwright",
    "test",
    "--config=tests/e2e/playwright.config.ts",
    "--pass-with-no-tests",
    "--reporter=list,json",
  ],
  report: join(reports, "browser.json"),
  count: playwrightCounts,
};

function runProgram(command: readonly string[], report?: string): boolean {
  const [program = "", ...args] = command;
  const env = { ...process.env, PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: "1", TURBO_TELEMETRY_DISABLED: "1" };
  const run = spawnSync(join(root, "node_modules/.bin", program), args, {
    cwd: root,
    env: report === undefined ? env : { ...env, PLAYWRIGHT_JSON_OUTPUT_NAME: report },
    stdio: ["ignore", "inherit", "inherit"],
  });
  return run.status === 0;
}

function runSuite(suite: Suite): TestCounts {
  console.log(`\n== ${suite.name}`);
  const ended = runProgram(suite.command, suite.report);
  const counts = suite.count(suite.report);
  if (suite !== browserSuite) failures.push(...failedTests(suite.report));
  if (ended) return counts ?? NO_TESTS;
  // A runner that ends badly with no failed test (an error between tests, a crash) is itself the failure.
  return counts === undefined || counts.failed === 0
    ? addCounts(counts ?? NO_TESTS, { passed: 0, failed: 1, skipped: 0 })
    : counts;
}

function provision(): void {
  const outcome = provisionDebianPackages([
    { debianPackage: "chromium", isPresent: () => chromiumProgram() !== undefined },
    { debianPackage: "postgresql", isPresent: () => postgresPrograms() !== undefined },
    { debianPackage: "redis-server", isPresent: () => existsSync(REDIS_PROGRAM) },
  ]);
  if (outcome.kind === "installed") console.log(`Installed ${outcome.packages.join(", ")}`);
  if (outcome.kind === "refused")
    console.log(`Not installed: ${outcome.packages.join(", ")}: ${outcome.why}`);
}

async function runAll(): Promise<TestCounts> {
  provision();
  let sum = runSuite(vitestSuite("unit and property", ["unit", "property"]));
  const servers = await startTestServers();
  try {
    sum = addCounts(sum, runSuite(vitestSuite("contract", ["contract"])));
    sum = addCounts(sum, runSuite(vitestSuite("golden", ["golden"])));
    console.log("\n== build");
    if (!runProgram(["turbo", "run", "build", "--output-logs=errors-only"])) {
      console.log("FAILED build: the browser suite cannot run");
      return addCounts(sum, { passed: 0, failed: 1, skipped: 0 });
    }
    if (chromiumProgram() === undefined) console.log("SKIPPED browser: there is no chromium");
    else sum = addCounts(sum, runSuite(browserSuite));
  } finally {
    await servers.stop();
  }
  return sum;
}

let counts = NO_TESTS;
try {
  counts = await runAll();
} catch (error) {
  console.error(error);
  counts = addCounts(counts, { passed: 0, failed: 1, skipped: 0 });
} finally {
  rmSync(reports, { recursive: true, force: true });
}
for (const failure of failures) console.log(`\nFAILED ${failure}`);
console.log(`\n${sayCounts(counts)}`);
process.exitCode = counts.failed === 0 ? 0 : 1;
