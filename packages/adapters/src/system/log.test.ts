import { describe, expect, test } from "vitest";
import { jsonLog } from "./log.ts";

function linesOf(say: (log: ReturnType<typeof jsonLog>) => void): Record<string, unknown>[] {
  const written: string[] = [];
  say(jsonLog("info", { write: (line: string) => void written.push(line) }));
  return written.map((line) => JSON.parse(line) as Record<string, unknown>);
}

describe("the log", () => {
  test("writes message and details as one JSON object a line", () => {
    const [line] = linesOf((log) => log.info("A plan was made", { runId: "r-1", steps: 400 }));
    expect(line).toMatchObject({ msg: "A plan was made", runId: "r-1", steps: 400 });
  });

  test("never shows a secret by name", () => {
    const text = JSON.stringify(
      linesOf((log) => log.warn("Refused", { password: "hunter2", token: "abc123" })),
    );
    expect(text).not.toMatch(/hunter2|abc123/);
    expect(text).toContain("(not shown)");
  });

  test("takes the password out of an address in an error, its stack and its cause", () => {
    const cause = new Error("connect postgres://plan:s3cret@db:5432/formweek");
    const error = new Error("failed for redis://:s3cret@queue:6379", { cause });
    const text = JSON.stringify(linesOf((log) => log.error("The store is down", {}, error)));
    expect(text).not.toContain("s3cret");
    expect(text).toContain("postgres://plan:(not shown)@db:5432/formweek");
  });

  test("says nothing below its level", () => {
    const written: string[] = [];
    jsonLog("error", { write: (line: string) => void written.push(line) }).warn("quiet");
    expect(written).toEqual([]);
  });
});
