import { deflateRawSync } from "node:zlib";
import type { TableLimits } from "@formweek/application";
import { describe, expect, it } from "vitest";
import { storedZip } from "./stored-zip.ts";
import { tableReader } from "./table-reader.ts";
import { unzipWithin } from "./unzip-within.ts";

const LIMITS: TableLimits = {
  maxFileBytes: 64 * 1024 * 1024,
  maxUnpackedBytes: 64 * 1024 * 1024,
  maxRowsPerTable: 100_000,
  maxColumns: 300,
  maxTables: 5,
  maxCellCharacters: 10_000,
};
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const entry = (name: string, text: string) => ({ name, bytes: Buffer.from(text) });

/** The least workbook with one sheet (ECMA-376 part 1; from memory). */
const entriesOf = (sheetData: string) => [
  entry(
    "xl/workbook.xml",
    `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="Orders" sheetId="1" r:id="rId1"/></sheets></workbook>`,
  ),
  entry(
    "xl/_rels/workbook.xml.rels",
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${relations}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
  ),
  entry(
    "xl/styles.xml",
    `<styleSheet xmlns="${main}"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
  ),
  entry(
    "xl/worksheets/sheet1.xml",
    `<worksheet xmlns="${main}"><sheetData>${sheetData}</sheetData></worksheet>`,
  ),
];
const one = '<row r="1"><c r="A1"><v>1</v></c></row>';
const xlsx = (bytes: Uint8Array) => tableReader.read({ name: "orders.xlsx", bytes }, LIMITS);
const csv = (text: string) => tableReader.read({ name: "orders.csv", bytes: Buffer.from(text) }, LIMITS);
const codeOf = (result: Awaited<ReturnType<typeof xlsx>>) => (result.ok ? "read" : result.faults[0]?.code);

describe("workbooks that are small on disk and huge once laid out", () => {
  it.each<[string, string]>([
    ["one cell in the last corner", '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'],
    ["the same with other quotes and spaces", "<row><c\n r = 'XFD1048576' ><v>1</v></c></row>"],
    [
      "a wide first row above many short ones",
      `<row r="1"><c r="XFD1"><v>1</v></c></row>${"<row><c><v>1</v></c></row>".repeat(5_000)}`,
    ],
    ["cells without an address, without end", `<row>${"<c/>".repeat(10_000_001)}</row>`],
  ])("%s are refused before they are laid out", async (_, cells) => {
    expect(codeOf(await xlsx(storedZip(entriesOf(cells))))).toBe("unpacks-too-large");
  });

  it.each<[string, string]>([
    ["below the last row", '<row r="1"><c r="A9999999999"><v>1</v></c></row>'],
    ["right of the last column", '<row r="1"><c r="ZZZZZZZ1"><v>1</v></c></row>'],
    ["hidden by escapes", '<row r="1"><c r="&#88;FD1048576"><v>1</v></c></row>'],
    ["in a tag without end", `<row>${"<c ".repeat(200_000)}</row>`],
  ])("an address %s is damage", async (_, cells) => {
    expect(codeOf(await xlsx(storedZip(entriesOf(cells))))).toBe("broken-file");
  });

  it("reads a sheet whose last row is far below but holds no cell", async () => {
    const result = await xlsx(storedZip(entriesOf(`${one}<row r="1048576" ht="12.8"/>`)));
    expect(result.ok && result.tables[0]?.rows).toEqual([[1]]);
  });

  it("says of cells without an address that the workbook has to be saved again", async () => {
    const result = await xlsx(storedZip(entriesOf("<row><c><v>1</v></c></row>")));
    expect(result).toMatchObject({ ok: false, faults: [{ code: "broken-file" }] });
    expect(result.ok ? "" : result.faults[0]?.remedy).toContain("save it again");
  });
});

describe("archives that say one thing and hold another", () => {
  it("reads only what the directory names", async () => {
    const bytes = storedZip(entriesOf(one));
    // a second sheet's worth of packed content before the directory, which no line of the directory names
    const packed = deflateRawSync(Buffer.alloc(200 * 1024 * 1024, 48));
    const name = Buffer.from("xl/sharedStrings.xml");
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt32LE(packed.length, 18);
    local.writeUInt32LE(200 * 1024 * 1024, 22);
    local.writeUInt16LE(name.length, 26);
    const hidden = Buffer.concat([local, name, packed]);
    const directoryAt = bytes.readUInt32LE(bytes.length - 6);
    const both = Buffer.concat([bytes.subarray(0, directoryAt), hidden, bytes.subarray(directoryAt)]);
    both.writeUInt32LE(directoryAt + hidden.length, both.length - 6);
    const result = await xlsx(both);
    expect(result.ok && result.tables[0]?.rows).toEqual([[1]]);
  });

  it("refuses two entries of one name", async () => {
    const twice = [...entriesOf(one), entry("xl/worksheets/sheet1.xml", "other")];
    expect(codeOf(await xlsx(storedZip(twice)))).toBe("broken-file");
  });

  it("packs again what it unpacked", () => {
    const entries = entriesOf(one);
    const unzipped = unzipWithin(storedZip(entries), LIMITS.maxUnpackedBytes);
    expect(
      unzipped.ok && unzipped.entries.map(({ name, bytes }) => [name, Buffer.from(bytes).toString()]),
    ).toEqual(entries.map(({ name, bytes }) => [name, bytes.toString()]));
  });
});

describe("dates in workbooks", () => {
  it("reads a number that is too large for a date as an error of its cell", async () => {
    const result = await xlsx(
      storedZip(
        entriesOf(
          '<row r="1"><c r="A1" s="1"><v>46356.25</v></c><c r="B1" s="1"><v>1e12</v></c><c r="C1" s="1"><v>5e6</v></c></row>',
        ),
      ),
    );
    // 46356 = 2026-11-30 in the 1900 date system (ECMA-376 part 1, 18.17.4.1; from memory)
    expect(result.ok && result.tables[0]?.rows[0]).toEqual([
      { kind: "date", wallClock: "2026-11-30T06:00:00" },
      { kind: "error", text: "##### (no date)" },
      { kind: "error", text: "##### (no date)" },
    ]);
  });
});

describe("CSV files that are nothing but marks", () => {
  it("drops empty lines below the table, however many", async () => {
    const result = await csv(`order;pieces\r\n1;5\r\n${";\r\n".repeat(1_048_576)}`);
    expect(result.ok && result.tables[0]?.rows).toEqual([
      ["order", "pieces"],
      ["1", "5"],
    ]);
  });

  it.each<[string, string, string]>([
    ["lines", `a\n${"\n".repeat(30_000_000)}b`, "too-many-rows"],
    ["commas", `a${",".repeat(30_000_000)}b`, "too-large"],
    ["a quotation mark before 30 MB", `a,b\n"${"x".repeat(30_000_000)}`, "broken-quotes"],
  ])("stops early at %s without end", async (_, text, code) => {
    expect(codeOf(await csv(text))).toBe(code);
  });
});
