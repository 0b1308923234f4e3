import { describe, expect, test } from "vitest";
import { readConfig, readWorkerConfig } from "./config.ts";

const servers = { DATABASE_URL: "postgres://u:p@db:5432/formweek", REDIS_URL: "redis://queue:6379" };

function faultsOf(environment: Record<string, string>): readonly string[] {
  const read = readConfig(environment);
  return read.ok ? [] : read.faults.map(({ variable }) => variable);
}

describe("the settings", () => {
  test("nothing set: this machine, a folder here, loopback only", () => {
    expect(readConfig({})).toEqual({
      ok: true,
      config: {
        mode: "embedded",
        dataFolder: "./data",
        host: "127.0.0.1",
        port: 4310,
        logLevel: "info",
        concurrentRuns: 2,
      },
    });
  });

  test("both servers set: distributed, on any address", () => {
    const read = readConfig({ ...servers, HOST: "0.0.0.0", PORT: "8080", LOG_LEVEL: "warn" });
    expect(read).toMatchObject({
      ok: true,
      config: { mode: "distributed", host: "0.0.0.0", port: 8080, redisPrefix: "formweek", healthPort: null },
    });
  });

  test("an empty variable counts as not set", () => {
    expect(readConfig({ DATABASE_URL: "", REDIS_URL: " ", PORT: "" })).toEqual(readConfig({}));
  });

  test.each([
    ["one server without the other", { DATABASE_URL: servers.DATABASE_URL }, ["REDIS_URL"]],
    ["the other without the one", { REDIS_URL: servers.REDIS_URL }, ["DATABASE_URL"]],
    ["an address that is none", { ...servers, DATABASE_URL: "db" }, ["DATABASE_URL"]],
    ["an address of another kind", { ...servers, REDIS_URL: "http://queue" }, ["REDIS_URL"]],
    ["a port that is no number", { PORT: "eighty" }, ["PORT"]],
    ["a port out of range", { PORT: "65536" }, ["PORT"]],
    ["a half port", { PORT: "80.5" }, ["PORT"]],
    ["no run at a time", { FORMWEEK_RUNS: "0" }, ["FORMWEEK_RUNS"]],
    ["an unknown level", { LOG_LEVEL: "loud" }, ["LOG_LEVEL"]],
    ["other machines without servers", { HOST: "0.0.0.0" }, ["HOST"]],
    ["a name that only looks like loopback", { HOST: "127.0.0.1.example.org" }, ["HOST"]],
  ])("%s is a fault", (_, environment, variables) => {
    expect(faultsOf(environment as Record<string, string>)).toEqual(variables);
  });

  test("all faults are told at once", () => {
    expect(faultsOf({ PORT: "x", LOG_LEVEL: "y", REDIS_URL: "z" })).toEqual([
      "LOG_LEVEL",
      "PORT",
      "DATABASE_URL",
      "REDIS_URL",
    ]);
  });

  test("a fault never repeats an address, which may hold a password", () => {
    const read = readConfig({ DATABASE_URL: "mysql://u:s3cret@db", REDIS_URL: "s3cret" });
    expect(JSON.stringify(read)).not.toContain("s3cret");
  });

  test.each(["localhost", "127.0.0.1", "127.8.9.1", "::1"])("%s reaches this machine only", (host) => {
    expect(readConfig({ HOST: host }).ok).toBe(true);
  });

  test("a worker needs servers", () => {
    expect(readWorkerConfig({})).toMatchObject({ ok: false, faults: [{ variable: "DATABASE_URL" }] });
    expect(readWorkerConfig({ ...servers, FORMWEEK_HEALTH_PORT: "4311" })).toMatchObject({
      ok: true,
      config: { healthPort: 4311 },
    });
  });
});
