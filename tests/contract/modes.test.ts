import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { distributedConfig, embeddedConfig, haveServers, started } from "../fixtures/composed-planners.ts";
import { planningSuite, sameInEveryMode } from "./suites/planning-suite.ts";

const folder = mkdtempSync(join(tmpdir(), "formweek-modes-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the planner on one machine", () => {
  planningSuite("embedded", async () => {
    const runtime = await started(embeddedConfig(folder));
    return { asked: runtime.app, watched: runtime.app, close: runtime.close };
  });
});

describe.skipIf(!haveServers)("the planner on servers: two that answer, one that works", () => {
  planningSuite("distributed", async () => {
    const config = distributedConfig();
    const [one, other] = [await started(config), await started(config)];
    const worker = await started(config, "worker");
    expect(await worker.health()).toEqual({
      ready: true,
      parts: [
        { name: "database", up: true },
        { name: "queue", up: true },
      ],
    });
    const close = async (): Promise<void> => {
      for (const runtime of [worker, one, other]) await runtime.close();
    };
    return { asked: one.app, watched: other.app, close };
  });

  test("plans exactly as on one machine", sameInEveryMode);
});
