/** Plants one file per forbidden import and expects the named rule to refuse it: an untripped rule is not known to work. */
import { spawnSync } from "node:child_process";
import { dirname, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  ALLOWED_IMPORTS,
  CLOSING_IMPORT,
  PRETENDED_PACKAGES,
  REFUSED_IMPORTS,
  type PlantedImport,
} from "../fixtures/planted-imports.ts";
import { installedProgram, plantTree, type PlantedTree } from "../fixtures/planted-tree.ts";

interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string };
}
interface CruiseReport {
  readonly summary: {
    readonly violations: readonly Violation[];
    readonly ruleSetUsed: { readonly forbidden: readonly { readonly name: string }[] };
  };
}

let tree: PlantedTree;
let report: CruiseReport["summary"];

beforeAll(() => {
  tree = plantTree([".dependency-cruiser.mjs", "tsconfig.base.json"]);
  pretendPackages(tree);
  const planted = [...REFUSED_IMPORTS, CLOSING_IMPORT, ...ALLOWED_IMPORTS];
  const froms = new Set(planted.map((one) => one.from));
  for (const { to } of planted) if (isFile(to) && !froms.has(to)) tree.write(to, "export const x = 1;\n");
  for (const one of planted) tree.write(one.from, importText(one));
  const run = spawnSync(
    installedProgram("depcruise"),
    ["packages", "apps", "tests", "--config", ".dependency-cruiser.mjs", "--output-type", "json"],
    { cwd: tree.folder, encoding: "utf8", maxBuffer: 64 * 1024 * 1024 },
  );
  expect(run.stderr).toBe("");
  report = (JSON.parse(run.stdout) as CruiseReport).summary;
});

afterAll(() => tree.remove());

describe("import rules", () => {
  test.each(REFUSED_IMPORTS)("$rule refuses $from → $to", ({ rule, from, to }) => {
    const found = report.violations.filter((violation) => violation.from === from && leadsTo(violation, to));
    expect(found.map((violation) => violation.rule.name)).toContain(rule);
  });

  test.each(ALLOWED_IMPORTS)("$from → $to is allowed", ({ from }) => {
    expect(report.violations.filter((violation) => violation.from === from)).toEqual([]);
  });

  test("every rule has a planted violation", () => {
    const rules = report.ruleSetUsed.forbidden.map((rule) => rule.name).sort(byText);
    const planted = [...new Set(REFUSED_IMPORTS.map((one) => one.rule))].sort(byText);
    expect(planted).toEqual(rules);
  });
});

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function isFile(to: string): boolean {
  return /[.]tsx?$/.test(to);
}

function leadsTo(violation: Violation, to: string): boolean {
  if (isFile(to)) return violation.to === to;
  const name = to.replace(/^node:/, "");
  return violation.to === name || violation.to.startsWith(`node_modules/${name}/`);
}

function importText({ from, to, typeOnly }: Omit<PlantedImport, "rule">): string {
  const path = relative(dirname(from), to);
  const specifier = !isFile(to) ? to : path.startsWith(".") ? path : `./${path}`;
  return typeOnly === true
    ? `import type { x } from "${specifier}";\nexport type Y = typeof x;\n`
    : `import { x } from "${specifier}";\nexport { x };\n`;
}

function pretendPackages({ write }: PlantedTree): void {
  const { dependencies, devDependencies, undeclared } = PRETENDED_PACKAGES;
  const versions = (names: readonly string[]): Record<string, string> =>
    Object.fromEntries(names.map((name) => [name, "1.0.0"]));
  const manifest = { dependencies: versions(dependencies), devDependencies: versions(devDependencies) };
  write("package.json", JSON.stringify({ name: "planted", type: "module", ...manifest }));
  for (const name of [...dependencies, ...devDependencies, ...undeclared]) {
    write(`node_modules/${name}/package.json`, JSON.stringify({ name, version: "1.0.0", main: "index.js" }));
    write(`node_modules/${name}/index.js`, "export const x = 1;\n");
  }
}
