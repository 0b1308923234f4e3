import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { FigureSheet } from "../plans/figure.ts";

const dist = join(import.meta.dirname, "../../../apps/web/dist");
const kilobytes = (path: string): number => gzipSync(readFileSync(path), { level: 9 }).length / 1000;

/** What the browser fetches before the first screen, and what there is in all. */
export function measureScripts(sheet: FigureSheet): void {
  const page = readFileSync(join(dist, "index.html"), "utf8");
  const named = page.matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/g);
  const first = [...new Set([...named].map(([, path]) => path ?? ""))];
  const all = readdirSync(join(dist, "assets")).filter((name) => name.endsWith(".js"));
  const sum = (paths: readonly string[]): number =>
    paths.reduce((total, path) => total + kilobytes(join(dist, path)), 0);
  const part = "scripts";
  sheet.add({ part, name: "before the first screen, gzipped", value: sum(first), unit: "kB" });
  const every = sum(all.map((name) => `assets/${name}`));
  sheet.add({ part, name: "all, gzipped", value: every, unit: "kB" });
}
