import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../../", import.meta.url));
const tsx = join(root, "node_modules/tsx/dist/cli.mjs");
const main = join(root, "apps/cli/src/main.ts");
let folder = "";
const at = (name: string): string => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "formweek-cli-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs the command line as its user would: its own process, from the sources. */
function run(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [tsx, "--conditions=source", main, ...args],
    {
      cwd: root,
      encoding: "utf8",
    },
  );
  return { status, stdout, stderr };
}

interface LoosePlan {
  segments: { kind: string; lineId: string; start: string; end: string }[];
  summary: { orders: number };
}
const planAt = (name: string): LoosePlan => JSON.parse(readFileSync(at(name), "utf8")) as LoosePlan;

describe("plan and audit on the demo", () => {
  it("prints a schedule, writes a plan, and the audit finds it valid", () => {
    const planned = run("plan", "--demo", "calm", "--steps", "200", "--seed", "5", "--out", at("calm.json"));
    expect(planned.stderr).toBe("");
    expect(planned.status).toBe(0);
    expect(planned.stdout).toContain("Line 1 (L1)");
    expect(planned.stdout).toMatch(/\d+ on time, \d+ late, \d+ covered by stock, \d+ not planned/);
    const audited = run("audit", "--demo", "calm", "--plan", at("calm.json"));
    expect(audited).toMatchObject({ status: 0, stdout: "valid\n" });
  });

  it("gives the same bytes for the same steps and seed", () => {
    run("plan", "--demo", "calm", "--steps", "200", "--seed", "5", "--out", at("again.json"));
    expect(readFileSync(at("again.json"), "utf8")).toBe(readFileSync(at("calm.json"), "utf8"));
  });

  it("finds what was changed in a plan by hand", () => {
    const plan = planAt("calm.json");
    const first = plan.segments.find(({ kind }) => kind === "run");
    if (first === undefined) throw new Error("the plan has no run");
    first.start = "2026-11-30T03:00:00Z";
    writeFileSync(at("tampered.json"), JSON.stringify(plan));
    const audited = run("audit", "--demo", "calm", "--plan", at("tampered.json"));
    expect(audited.status).toBe(1);
    expect(audited.stdout).toMatch(/rule \d, /);
    expect(audited.stdout).toContain("not valid");
  });

  it("says when a plan was made from other inputs", () => {
    const audited = run("audit", "--demo", "full", "--plan", at("calm.json"));
    expect(audited.status).toBe(1);
    expect(audited.stdout).toContain("other inputs");
  });
});

/** Signals that a process handles itself, as the kernel shows them; bit 0 is the closing of its terminal. */
const catchesHangUp = (pid: number): boolean => {
  const mask = /^SigCgt:\s*([0-9a-f]+)$/m.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1] ?? "0";
  return (BigInt(`0x${mask}`) & 1n) === 1n;
};

describe("Ctrl-C", () => {
  it("keeps the best plan, though launchers hand the key press on a second time", async () => {
    const words = ["plan", "--demo", "full", "--seconds", "3600", "--out", at("stopped.json")];
    const planning = spawn(process.execPath, ["--conditions=source", "--import", "tsx", main, ...words], {
      cwd: root,
      stdio: "ignore",
    });
    const ended = once(planning, "exit");
    const { pid } = planning;
    if (pid === undefined) throw new Error("the command did not start");
    while (!catchesHangUp(pid)) await new Promise((resolve) => setTimeout(resolve, 50));
    planning.kill("SIGINT");
    planning.kill("SIGTERM"); // a second SIGINT would melt into the first
    expect(await ended).toEqual([0, null]);
    expect(run("audit", "--demo", "full", "--plan", at("stopped.json"))).toMatchObject({
      status: 0,
      stdout: "valid\n",
    });
  });
});

describe("the schedule on paper", () => {
  it("shows when a line is closed and why", () => {
    const planned = run("plan", "--demo", "breakdown", "--steps", "20");
    expect(planned.stdout).toMatch(/closed {2}index drive failed/);
  });
});

describe("what is late", () => {
  it("is said with what holds it, and with remedies where they are asked for", () => {
    const planned = run("plan", "--demo", "breakdown", "--steps", "0", "--remedies", "1");
    expect(planned.status).toBe(0);
    expect(planned.stdout).toMatch(/late: \d+ .*\n {2}because: .* is free from then on\n/);
    expect(planned.stdout).toMatch(
      /\d+: what would help, each tried by planning anew\n {2}\S.* \d+ → \d+ late/,
    );
    expect(planned.stdout).not.toMatch(/work Line 3 from 12-02 06:00/); // the line is closed for a service then
  });
  it("is not asked for by half a number", () => {
    const planned = run("plan", "--demo", "calm", "--remedies", "1.5");
    expect(planned).toMatchObject({ status: 2, stdout: "" });
    expect(planned.stderr).toContain("--remedies");
  });
});

describe("a trade-off", () => {
  it("prints plans of which none beats another, and writes each, first and last of which the audit finds valid", () => {
    const words = ["--demo", "full", "--steps", "350", "--seed", "2"];
    const planned = run("plan", ...words, "--trade-off", "--out", at("traded.json"));
    expect(planned).toMatchObject({ status: 0, stderr: "" });
    expect(planned.stdout).toMatch(
      /plan +lateness +changes +labour +(?:earliness +)?(?:load balance +)?total +not planned +best in\n/,
    );
    const rows = planned.stdout.split("\n").filter((line) => /^ +\d+ {2}/.test(line));
    const written = [...planned.stdout.matchAll(/^Written to (.*)$/gm)].map(([, file]) => file ?? "");
    expect(rows.length).toBeGreaterThan(1);
    expect(written).toHaveLength(rows.length);
    expect(written.slice(0, 2)).toEqual([at("traded.json"), at("traded-2.json")]);
    for (const file of [written[0] ?? "", written.at(-1) ?? ""])
      expect(run("audit", "--demo", "full", "--plan", file)).toMatchObject({ status: 0, stdout: "valid\n" });
  });
});

describe("generate, then plan from the files", () => {
  it("writes the import formats, which plan and audit read back", () => {
    const generated = run("generate", "--lines", "4", "--orders", "40", "--seed", "9", "--out", at("plant"));
    expect(generated.status).toBe(0);
    expect(readdirSync(at("plant"))).toEqual(
      expect.arrayContaining(["lines.csv", "moulds.csv", "orders.csv"]),
    );
    const files = ["--plant", at("plant"), "--orders", join(at("plant"), "orders.csv")];
    const planned = run("plan", ...files, "--steps", "100", "--threads", "2", "--out", at("generated.json"));
    expect(planned.stderr).toBe("");
    expect(planned.status).toBe(0);
    expect(planAt("generated.json").summary.orders).toBe(40);
    expect(run("audit", ...files, "--plan", at("generated.json"))).toMatchObject({
      status: 0,
      stdout: "valid\n",
    });
  });

  it("draws the same plant for the same seed and refuses a folder that is in use", () => {
    run("generate", "--lines", "4", "--orders", "40", "--seed", "9", "--out", at("plant-again"));
    for (const name of readdirSync(at("plant"))) {
      expect(readFileSync(join(at("plant-again"), name), "utf8")).toBe(
        readFileSync(join(at("plant"), name), "utf8"),
      );
    }
    const refused = run("generate", "--lines", "4", "--orders", "40", "--out", at("plant"));
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain("--force");
  });

  it("lists every bad row and plans nothing unless told to go on", () => {
    const [header = "", first = "", second = ""] = readFileSync(
      join(at("plant"), "orders.csv"),
      "utf8",
    ).split("\r\n");
    const bad = first.split(",").map((cell, index) => (index === 3 ? "many" : cell));
    writeFileSync(at("bad.csv"), [header, bad.join(","), second, ""].join("\r\n"));
    const files = [
      "--plant",
      at("plant"),
      "--orders",
      at("bad.csv"),
      "--steps",
      "1",
      "--out",
      at("bad.json"),
    ];
    const refused = run("plan", ...files);
    expect(refused.status).toBe(1);
    expect(refused.stderr).toMatch(/error: bad, row 2, column "pieces", "many": is not a number\./);
    expect(existsSync(at("bad.json"))).toBe(false);
    expect(run("plan", ...files, "--skip-bad-rows").status).toBe(0);
    expect(planAt("bad.json").summary.orders).toBe(1);
  });
});

describe("orders that are none", () => {
  it("are said to be none", () => {
    writeFileSync(at("none.csv"), "order,product,pieces,due\r\n");
    const refused = run("plan", "--demo", "calm", "--orders", at("none.csv"), "--steps", "1");
    expect(refused.status).toBe(1);
    expect(refused.stderr).toContain("holds no order");
  });
});

describe("rate", () => {
  it("prints the cycle with its parts and what limits it", () => {
    const rate = run(
      "rate",
      "--demo",
      "full",
      "--line",
      "L3",
      "--mould",
      "C75-60-090",
      "--product",
      "C75-60-090 white",
    );
    expect(rate.status).toBe(0);
    expect(rate.stdout).toContain("It fits");
    expect(rate.stdout).toMatch(/closed [\d.]+ s: forming [\d.]+, stabilising [\d.]+, trimming [\d.]+/);
    expect(rate.stdout).toMatch(/limits it/);
    expect(rate.stdout).toMatch(/\d+ kg\/h of sheet/);
  });

  it("says by how much a mould does not fit", () => {
    const rate = run(
      "rate",
      "--demo",
      "full",
      "--line",
      "L7",
      "--mould",
      "C75-60-090",
      "--product",
      "C75-60-090 white",
    );
    expect(rate.stdout).toContain("It does not fit");
    expect(rate.stdout).toMatch(/\d+ mm too much/);
    expect(rate.stdout).toContain("Rate if it fitted");
    expect(rate.stdout).not.toContain("Rate to plan with");
  });
});

describe("commands that cannot be carried out", () => {
  it.each([
    [["plan", "--demo", "busy"], "Choose calm, full, breakdown."],
    [["plan", "--demo", "calm", "--plant", "x"], "Give one of them."],
    [["plan", "--demo", "calm", "--steps", "1", "--seconds", "1"], "Give one of them."],
    [["plan", "--demo", "calm", "--seed", "one"], "Give a whole number"],
    [["plan", "--demo", "calm", "--trade-off=all"], "--trade-off takes no value"],
    [["plan", "--demo", "calm", "--trade-off", "--remedies", "1"], "Give one of them."],
    [["plan", "--demo", "calm", "--members", "0"], "from 1 to 64"],
    [["plan", "--plant", "/nowhere", "--orders", "x.csv"], "is not there"],
    [["plan", "--speed", "9"], "There is no option --speed. See --help"],
    [["plan", "calm"], '"calm" stands alone'],
    [["plan", "--demo"], "--demo needs a value"],
    [["generate", "--force=yes"], "--force takes no value"],
    [["audit", "--demo", "calm", "--plan", "packages"], "is a folder"],
    [["plan", "--demo", "calm", "--out", "/nowhere/plan.json"], "The folder /nowhere is not there"],
    [["generate", "--lines", "2", "--orders", "4", "--out", "package.json"], "is a file"],
    [["audit", "--demo", "calm"], "--plan is missing"],
    [["audit", "--demo", "calm", "--plan", "package.json"], "is no plan file"],
    [["rate", "--demo", "calm", "--line", "L99", "--mould", "x", "--product", "y"], 'no line "L99"'],
    [["generate", "--lines", "0", "--orders", "4", "--out", "x"], "from 1 to 200"],
    [["dance"], 'There is no command "dance"'],
  ])("%j ends with code 2 and a remedy", (args, said) => {
    const refused = run(...args);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain(said);
    expect(refused.stdout).toBe("");
  });

  it.each(["plan", "audit", "rate", "generate"])("%s has help", (command) => {
    const help = run(command, "--help");
    expect(help).toMatchObject({ status: 0, stderr: "" });
    expect(help.stdout).toContain(`npm run ${command}`);
  });
});

describe("a promise on the command line", () => {
  const enquiry = ["promise", "--demo", "calm", "--steps", "60"];

  it("is the same every time, and says how it comes about", () => {
    const asked = [...enquiry, "--product", "C75-60-090 white", "--pieces", "50000", "--parts"];
    const answer = run(...asked);
    expect(answer).toMatchObject({ status: 0, stderr: "" });
    expect(answer.stdout).toMatch(/^50,000 × .*\n(.*\n)*Promise: 2026-\d\d-\d\d/);
    expect(answer.stdout).toMatch(/pieces\/h, (proven by|computed)/);
    expect(run(...asked).stdout).toBe(answer.stdout);
  });

  it("names what is wrong with it, and what is missing where it cannot be", () => {
    const wrong = run(...enquiry, "--product", "no such thing", "--pieces", "10", "--wanted", "2020-01-01");
    expect(wrong).toMatchObject({ status: 2, stdout: "" });
    expect(wrong.stderr).toContain("--product");
    expect(wrong.stderr).toContain("--wanted");
    expect(run(...enquiry, "--product", "x", "--pieces", "0").status).toBe(2);
    const impossible = run(...enquiry, "--product", "C75-60-090 white", "--pieces", "900000000");
    expect(impossible.status).toBe(1);
    expect(impossible.stdout).toContain("Not possible");
  });
});
