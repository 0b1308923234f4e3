import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { enquiryTable, manualOfTable, orderTable, plantTables } from "@formweek/application";

it("is what IMPORT-FORMATS.md holds", () => {
  const file = readFileSync(new URL("../../packages/application/IMPORT-FORMATS.md", import.meta.url), "utf8");
  const tables = [orderTable, enquiryTable, ...Object.values(plantTables)];
  const missing = tables.map(manualOfTable).filter((text) => !file.includes(text));
  expect(missing).toEqual([]);
});
