import { existsSync, readFileSync } from "node:fs";

interface VitestReport {
  readonly testResults: readonly {
    readonly name: string;
    readonly status: string;
    readonly message?: string;
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly failureMessages?: readonly string[];
    }[];
  }[];
}

/** Characters of a failure's message that are repeated: its first lines say what was expected. */
const MESSAGE_LENGTH = 2000;

/** Name and message of each failed test of a vitest JSON report, or of a file that could not be loaded; none without a report. */
export function failedTests(file: string): string[] {
  if (!existsSync(file)) return [];
  const { testResults } = JSON.parse(readFileSync(file, "utf8")) as VitestReport;
  return testResults.flatMap(({ name, status, message, assertionResults }) => {
    if (status === "failed" && assertionResults.length === 0)
      return [`${name}\n${(message ?? "").slice(0, MESSAGE_LENGTH)}`];
    return assertionResults
      .filter((test) => test.status === "failed")
      .map(
        (test) =>
          `${name} > ${test.fullName}\n${(test.failureMessages ?? []).join("\n").slice(0, MESSAGE_LENGTH)}`,
      );
  });
}
