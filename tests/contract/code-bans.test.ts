/** Plants one file per banned construct and expects lint (or the pure compiler settings) to refuse it by name. */
import { spawnSync } from "node:child_process";
import { relative } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ALLOWED_CODE, REFUSED_CODE } from "../fixtures/planted-code.ts";
import {
  installedProgram,
  linkInstalledPackages,
  plantTree,
  type PlantedTree,
} from "../fixtures/planted-tree.ts";

interface LintMessage {
  readonly ruleId: string | null;
  readonly message: string;
}
interface LintedFile {
  readonly filePath: string;
  readonly messages: readonly LintMessage[];
}

let tree: PlantedTree;
let linted: ReadonlyMap<string, readonly LintMessage[]>;

/** Names the pure packages must not even be able to spell: no DOM, no Node types. */
const AMBIENT_NAMES = ["process", "console", "setTimeout", "fetch", "document"];

beforeAll(() => {
  tree = plantTree(["eslint.config.mjs", "tsconfig.base.json", "tsconfig.pure.json", "tsconfig.lint.json"]);
  linkInstalledPackages(tree);
  tree.write("packages/application/src/y.ts", "export type Y = 1;\n");
  for (const { file, text } of [...REFUSED_CODE, ...ALLOWED_CODE]) tree.write(file, text);
  for (const name of AMBIENT_NAMES)
    tree.write(`pure/uses-${name}.ts`, `export const x: unknown = ${name};\n`);
  tree.write("pure/tsconfig.json", JSON.stringify({ extends: "../tsconfig.pure.json", include: ["."] }));
  const run = spawnSync(installedProgram("eslint"), ["packages", "apps", "tests", "--format", "json"], {
    cwd: tree.folder,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  expect(run.stderr).toBe("");
  const files = JSON.parse(run.stdout) as readonly LintedFile[];
  linted = new Map(files.map((file) => [relative(tree.folder, file.filePath), file.messages]));
});

afterAll(() => tree.remove());

describe("lint bans", () => {
  test.each(REFUSED_CODE)("$rule bites in $file", ({ rule, file, message }) => {
    const said = linted.get(file)?.filter((found) => found.ruleId === rule) ?? [];
    expect(said.map((found) => found.message).join("\n")).toMatch(message);
  });

  test.each(ALLOWED_CODE)("what is right in $file passes", ({ file }) => {
    expect(linted.get(file)).toEqual([]);
  });
});

describe("compiler settings of the pure packages", () => {
  test("ambient names do not even typecheck", () => {
    const run = spawnSync(installedProgram("tsc"), ["-p", "pure", "--noEmit", "--composite", "false"], {
      cwd: tree.folder,
      encoding: "utf8",
    });
    const refused = AMBIENT_NAMES.filter((name) =>
      new RegExp(`uses-${name}[.]ts.+Cannot find name '${name}'`).test(run.stdout),
    );
    expect(refused).toEqual(AMBIENT_NAMES);
  });
});
