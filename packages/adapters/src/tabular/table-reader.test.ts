import { deflateRawSync } from "node:zlib";
import type { TableLimits } from "@formweek/application";
import { describe, expect, it } from "vitest";
import writeXlsxFile from "write-excel-file/node";
import { tableReader } from "./table-reader.ts";
import { tableWriter } from "./table-writer.ts";
import { unzipWithin } from "./unzip-within.ts";

const LIMITS: TableLimits = {
  maxFileBytes: 8 * 1024 * 1024,
  maxUnpackedBytes: 20 * 1024 * 1024,
  maxRowsPerTable: 60_000,
  maxColumns: 50,
  maxTables: 5,
  maxCellCharacters: 200,
};
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const csv = (bytes: Uint8Array | string) =>
  tableReader.read({ name: "week 49.csv", bytes: typeof bytes === "string" ? utf8(bytes) : bytes }, LIMITS);
const rowsOf = async (bytes: Uint8Array | string) => {
  const result = await csv(bytes);
  return result.ok ? result.tables[0]?.rows : result.faults;
};

interface Part {
  readonly name: string;
  readonly text: string;
  /** Sizes to lie with. */
  readonly claimed?: number;
  readonly encrypted?: boolean;
}

/** A zip archive as PKWARE's APPNOTE describes it (from memory), written here so that it can also lie. */
function zip(parts: readonly Part[]): Uint8Array {
  const files: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const { name, text, claimed, encrypted } of parts) {
    const packed = deflateRawSync(Buffer.from(text));
    const size = claimed ?? Buffer.byteLength(text);
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt32LE(packed.length, 18);
    local.writeUInt32LE(size, 22);
    local.writeUInt16LE(name.length, 26);
    const entry = Buffer.alloc(46);
    entry.writeUInt32LE(0x02014b50, 0);
    entry.writeUInt16LE(encrypted === true ? 1 : 0, 8);
    entry.writeUInt16LE(8, 10);
    entry.writeUInt32LE(packed.length, 20);
    entry.writeUInt32LE(size, 24);
    entry.writeUInt16LE(name.length, 28);
    entry.writeUInt32LE(offset, 42);
    const file = Buffer.concat([local, Buffer.from(name), packed]);
    files.push(file);
    directory.push(entry, Buffer.from(name));
    offset += file.length;
  }
  const central = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(parts.length, 8);
  end.writeUInt16LE(parts.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...files, central, end]);
}

/** The least workbook: one sheet with the given rows of XML (ECMA-376 part 1; from memory). */
function workbook(sheetData: string, tail = ""): Uint8Array {
  const ns = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
  const rel = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  return zip([
    {
      name: "[Content_Types].xml",
      text: '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    },
    {
      name: "xl/workbook.xml",
      text: `<?xml version="1.0"?><workbook ${ns} xmlns:r="${rel}"><sheets><sheet name="Orders &amp; more" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    },
    {
      name: "xl/_rels/workbook.xml.rels",
      text: `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${rel}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    },
    {
      name: "xl/worksheets/sheet1.xml",
      text: `<?xml version="1.0"?><worksheet ${ns} ${ns.replace("xmlns=", "xmlns:x=")}><sheetData>${sheetData}</sheetData>${tail}</worksheet>`,
    },
  ]);
}
const xlsx = (bytes: Uint8Array) => tableReader.read({ name: "orders.xlsx", bytes }, LIMITS);

describe("CSV as it comes", () => {
  it.each<[string, string]>([
    ["commas", "Order,Pieces\n1,5\n"],
    ["semicolons", "Order;Pieces\r\n1;5\r\n"],
    ["tabs", "Order\tPieces\n1\t5\n"],
    ["bars", "Order|Pieces\n1|5\n"],
    ["semicolons with decimal commas", "Order;Pieces\n1;5\n2;1,5\n"],
  ])("finds %s", async (_, text) => {
    expect((await rowsOf(text)) as unknown[]).toEqual(
      expect.arrayContaining([
        ["Order", "Pieces"],
        ["1", "5"],
      ]),
    );
  });

  it("reads UTF-8 with a mark, UTF-16 of either order, and says when it had to guess", async () => {
    const expected = [["Größe", "x"]];
    expect(await rowsOf(utf8("\ufeffGröße,x"))).toEqual(expected);
    const little = Buffer.from("\ufeffGröße,x", "utf16le");
    expect(await rowsOf(little)).toEqual(expected);
    expect(await rowsOf(Buffer.from(little).swap16())).toEqual(expected);
    const result = await csv(Uint8Array.from([0x47, 0x72, 0xf6, 0xdf, 0x65, 0x2c, 0x78]));
    expect(result).toMatchObject({ ok: true, tables: [{ rows: expected }] });
    expect(result.ok && result.notices[0]?.text).toContain("Windows-1252");
  });

  it("keeps empty lines, so that row numbers stay true", async () => {
    expect(await rowsOf("a,b\n\n,\n1,2\n")).toEqual([["a", "b"], [null], [null, null], ["1", "2"]]);
  });

  it("takes quoted delimiters, quotes and line breaks as text", async () => {
    expect(await rowsOf('a,b\n"x, y","say ""hi""\nagain"\n')).toEqual([
      ["a", "b"],
      ["x, y", 'say "hi"\nagain'],
    ]);
  });

  it.each<[string, Uint8Array, string]>([
    ["nothing", utf8(" \n"), "empty-file"],
    ["a quotation mark never closed", utf8('a,b\n"x,1\n2,3\n'), "broken-quotes"],
    ["a picture", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1, 0, 2]), "wrong-encoding"],
    ["too many columns", utf8("x,".repeat(1_000_000)), "too-many-columns"],
    ["too many rows", utf8("x,y\n".repeat(60_001)), "too-many-rows"],
    ["an endless cell", utf8(`a,b\n${"x".repeat(201)},1`), "cell-too-long"],
    ["too many bytes", new Uint8Array(LIMITS.maxFileBytes + 1), "too-large"],
  ])("refuses %s with a remedy", async (_, bytes, code) => {
    const result = await csv(bytes);
    expect(result).toMatchObject({ ok: false, faults: [{ code, fileName: "week 49.csv" }] });
    expect(result.ok ? "" : result.faults[0]?.remedy).not.toBe("");
  });

  it.each<[string, string, number]>([
    ["a quotation that nothing closes", `a,b\n1,"x\ny ""z"""\n2,"open\n${"3,4\n".repeat(50)}`, 4],
    ["a quotation mark inside of a cell", 'a,b\n1,2\n3,x"y\n4,5\n', 3],
  ])("names the line of %s", async (_, text, row) => {
    const result = await csv(text);
    expect(result).toMatchObject({ ok: false, faults: [{ code: "broken-quotes", row }] });
    expect(result.ok ? "" : result.faults[0]?.problem).toContain(`line ${String(row)}`);
  });

  it("names the kinds of file it knows", async () => {
    expect(await tableReader.read({ name: "orders.pdf", bytes: utf8("x") }, LIMITS)).toMatchObject({
      ok: false,
      faults: [{ code: "unknown-format" }],
    });
  });
});

describe("workbooks as they come", () => {
  it("reads stored values of formulas, and marks formulas without one and spreadsheet errors", async () => {
    const result = await xlsx(
      workbook(
        '<row r="1"><c r="A1" t="inlineStr"><is><t>Order</t></is></c><c r="B1"/><c r="C1"><v>5</v></c></row>' +
          '<row r="2"><c r="A2"><f>1+1</f><v>2</v></c><c r="B2"><f>NOW()</f></c><c r="C2" t="e"><f>A9/0</f><v>#DIV/0!</v></c></row>',
      ),
    );
    expect(result).toMatchObject({ ok: true, tables: [{ name: "Orders & more" }] });
    const rows = result.ok ? result.tables[0]?.rows : [];
    expect(rows?.[0]?.[0]).toBe("Order");
    expect(rows?.[1]).toEqual([2, { kind: "formula", value: null }, { kind: "error", text: "#DIV/0!" }]);
  });

  it.each<[string, string]>([
    [
      "single quotes and line breaks in tags",
      "<row r='1'><c r='A1'><v>1</v></c><c\nr='B1'><f>NOW()</f><v></v></c><c r='C1' t='e'><v>#REF!</v></c></row>",
    ],
    [
      "a prefix before every name",
      '<x:row r="1"><x:c r="A1"><x:v>1</x:v></x:c><x:c r="B1"><x:f>NOW()</x:f></x:c><x:c r="C1" t="e"><x:v>#REF!</x:v></x:c></x:row>',
    ],
  ])("marks them as well in XML with %s", async (_, rows) => {
    const result = await xlsx(workbook(rows));
    expect(result.ok && result.tables[0]?.rows).toEqual([
      [1, { kind: "formula", value: null }, { kind: "error", text: "#REF!" }],
    ]);
  });

  it("takes a formula whose result is empty text for an empty cell", async () => {
    const formula = '<f>IF(A1=1,"","late")</f>';
    const result = await xlsx(
      workbook(
        `<row r="1"><c r="A1"><v>1</v></c><c r="B1" t="str">${formula}<v></v></c><c r="C1" t="str">${formula}<v/></c><c r="D1"><v>2</v></c></row>`,
      ),
    );
    expect(result.ok && result.tables[0]?.rows).toEqual([[1, null, null, 2]]);
  });

  it("reads date cells as the wall clock that the sheet shows, to the second", async () => {
    const data = [[{ value: new Date("2026-12-04T14:30:00Z"), type: Date, format: "yyyy-mm-dd hh:mm" }]];
    const result = await xlsx(await writeXlsxFile(data).toBuffer());
    expect(result).toMatchObject({
      ok: true,
      tables: [{ rows: [[{ kind: "date", wallClock: "2026-12-04T14:30:00" }]] }],
    });
  });

  it("tells of merged cells", async () => {
    const cells = '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>2</v></c></row>';
    const result = await xlsx(workbook(cells, '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells>'));
    expect(result.ok && result.notices).toEqual([
      {
        sheet: "Orders & more",
        row: 1,
        text: "The cells A1:B1 are merged; only the first one holds their value.",
      },
    ]);
  });

  it("refuses an archive that unpacks to more than it may, whatever it says of itself", async () => {
    const zeros = "0".repeat(LIMITS.maxUnpackedBytes + 1);
    const honest = zip([{ name: "xl/workbook.xml", text: zeros }]);
    const lying = zip([{ name: "xl/workbook.xml", text: zeros, claimed: 10 }]);
    expect(honest.length).toBeLessThan(100_000);
    for (const bomb of [honest, lying]) {
      expect(await xlsx(bomb)).toMatchObject({ ok: false, faults: [{ code: "unpacks-too-large" }] });
    }
  });

  it.each<[string, Uint8Array, string]>([
    ["nothing", new Uint8Array(0), "empty-file"],
    ["text", utf8("Order,Pieces\n1,2"), "unknown-format"],
    [
      "an old or protected workbook",
      Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
      "password-protected",
    ],
    ["an encrypted archive", zip([{ name: "a", text: "b", encrypted: true }]), "password-protected"],
    ["an archive that is no workbook", zip([{ name: "readme.txt", text: "hello" }]), "broken-file"],
    ["a workbook cut short", workbook("").slice(0, 200), "broken-file"],
  ])("refuses %s with a remedy", async (_, bytes, code) => {
    const result = await xlsx(bytes);
    expect(result).toMatchObject({ ok: false, faults: [{ code }] });
    expect(result.ok ? "" : result.faults[0]?.remedy).not.toBe("");
  });
});

describe("what is written", () => {
  const table = {
    name: "orders",
    rows: [
      ["order", "customer", "pieces", "firm"],
      ['=cmd|"/c calc"!A1', "+49 30", 1200, true],
      ["-5", "@here", 0.05, false],
      ["plain, quoted", 'say "hi"', null, true],
    ],
  };

  const xmlOf = (bytes: Uint8Array): string => {
    const unzipped = unzipWithin(bytes, LIMITS.maxUnpackedBytes);
    const entries = unzipped.ok ? unzipped.entries : [];
    return entries.map((entry) => new TextDecoder().decode(entry.bytes)).join("\n");
  };

  it("never begins a cell of CSV with what a spreadsheet would run", async () => {
    const text = new TextDecoder().decode(tableWriter.csv(table));
    const result = await csv(tableWriter.csv(table));
    const cells = result.ok ? (result.tables[0]?.rows.flat() ?? []) : [];
    expect(cells.filter((cell) => typeof cell === "string" && /^[=+\-@\t\r]/.test(cell))).toEqual([]);
    expect(text.startsWith("\ufeff") || text.startsWith("order")).toBe(true);
    expect(cells).toContain('\'=cmd|"/c calc"!A1');
  });

  it("writes workbooks of typed cells that are read back as they were", async () => {
    const result = await xlsx(await tableWriter.xlsx([table, { name: "a/b:c", rows: [["x"], [1.5]] }]));
    expect(result.ok && result.tables.map(({ name }) => name)).toEqual(["orders", "a b c"]);
    expect(result.ok && result.tables[0]?.rows[3]).toEqual(["plain, quoted", 'say "hi"', null, true]);
    expect(result.ok && result.tables[0]?.rows[1]?.slice(2)).toEqual([1200, true]);
    expect(result.ok && result.tables[1]?.rows[1]).toEqual([1.5]);
  });

  it("writes dates of a workbook as dates that fit their column, and of CSV as local text", async () => {
    const dates = [
      { kind: "date", wallClock: "2026-11-30T05:00:01" },
      { kind: "date", wallClock: "2026-12-01" },
    ] as const;
    const bytes = await tableWriter.xlsx([{ name: "dates", rows: [["at", "day"], dates] }]);
    const result = await xlsx(bytes);
    expect(result.ok && result.tables[0]?.rows[1]).toEqual([
      { kind: "date", wallClock: "2026-11-30T05:00:01" },
      { kind: "date", wallClock: "2026-12-01T00:00:00" },
    ]);
    const [moments = 0, days = 0] = [...xmlOf(bytes).matchAll(/<col [^>]*width="([\d.]+)"/g)].map(
      ([, width]) => Number(width),
    );
    expect([moments >= "2026-11-30 05:00:01".length, days >= "2026-12-01".length]).toEqual([true, true]);
    expect(await rowsOf(tableWriter.csv({ name: "dates", rows: [["at", "day"], dates] }))).toEqual([
      ["at", "day"],
      ["2026-11-30 05:00:01", "2026-12-01"],
    ]);
  });

  it("writes no formula into a workbook, whatever the text", async () => {
    const xml = xmlOf(await tableWriter.xlsx([table]));
    expect(xml).toContain("<sheetData>");
    expect(xml).not.toMatch(/<f[ >]/);
  });

  it("cuts a text that no cell of a workbook holds, and only there", async () => {
    const long = { name: "long", rows: [["x".repeat(32_768)], ["y".repeat(32_767)]] };
    const read = await tableReader.read(
      { name: "long.xlsx", bytes: await tableWriter.xlsx([long]) },
      { ...LIMITS, maxCellCharacters: 40_000 },
    );
    expect(read.ok && read.tables[0]?.rows).toEqual([[`${"x".repeat(32_766)}…`], ["y".repeat(32_767)]]);
    expect(new TextDecoder().decode(tableWriter.csv(long))).toContain("x".repeat(32_768));
  });
});
