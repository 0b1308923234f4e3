/** Rules about files themselves, which neither the compiler nor lint looks at. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";

const root = join(import.meta.dirname, "../..");
const NOT_OURS = new Set(["node_modules", "dist", ".turbo", "test-results", "coverage"]);

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return NOT_OURS.has(entry.name) ? [] : filesUnder(path);
    return [path];
  });
}

const sources = ["packages", "apps", "tests"].flatMap(filesUnder).filter((path) => /[.]tsx?$/.test(path));

describe("source files", () => {
  test("are found at all", () => {
    expect(sources.length).toBeGreaterThan(20);
  });

  test("have kebab-case names", () => {
    const kebab = /^[a-z0-9]+(-[a-z0-9]+)*([.](test|spec|bench|config|d))*[.]tsx?$/;
    expect(sources.filter((path) => !kebab.test(basename(path)))).toEqual([]);
  });

  test("are named for what they hold", () => {
    const catchAll = /^(utils?|helpers?|misc|common|manager|types|constants)[.]/;
    expect(sources.filter((path) => catchAll.test(basename(path)))).toEqual([]);
  });

  test("leave no unfinished mark and no switched-off test", () => {
    const marks = new RegExp(
      ["TO" + "DO", "FIX" + "ME", "[.](only|todo)[(]", "(it|test|describe)[.]skip[(]"].join("|"),
    );
    expect(sources.filter((path) => marks.test(readFileSync(join(root, path), "utf8")))).toEqual([]);
  });
});

describe("turbo.json", () => {
  test("names only files that exist, so no cached result outlives a changed setting", () => {
    const turbo = JSON.parse(readFileSync(join(root, "turbo.json"), "utf8")) as {
      readonly globalDependencies: readonly string[];
    };
    expect(turbo.globalDependencies.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });
});

describe("workspaces", () => {
  const manifests = ["packages", "apps"].flatMap((folder) =>
    readdirSync(join(root, folder))
      .map((name) => `${folder}/${name}/package.json`)
      .filter((path) => existsSync(join(root, path))),
  );

  test.each(manifests)("%s depends on its siblings as its project references do", (path) => {
    const manifest = JSON.parse(readFileSync(join(root, path), "utf8")) as {
      readonly name: string;
      readonly dependencies?: Readonly<Record<string, string>>;
    };
    const project = JSON.parse(readFileSync(join(root, path, "../tsconfig.json"), "utf8")) as {
      readonly references?: readonly { readonly path: string }[];
      readonly compilerOptions: { readonly noEmit?: boolean };
    };
    const declared = Object.keys(manifest.dependencies ?? {}).filter((name) => name.startsWith("@formweek/"));
    const referenced = (project.references ?? []).map((one) => `@formweek/${basename(one.path)}`);
    expect(manifest.name).toBe(`@formweek/${basename(join(path, ".."))}`);
    // A project that emits nothing (the board) is checked straight from its siblings' sources.
    if (project.compilerOptions.noEmit !== true) expect(new Set(referenced)).toEqual(new Set(declared));
  });
});
