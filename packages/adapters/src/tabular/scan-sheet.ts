import type { UnzippedEntry } from "./unzip-within.ts";

/** What a sheet's XML tells that its values do not. Cells by address, "B7". */
export interface SheetScan {
  readonly name: string;
  /** Formulas without a stored value. */
  readonly uncomputed: ReadonlySet<string>;
  /** Spreadsheet errors, such as #REF!. */
  readonly errors: ReadonlyMap<string, string>;
  /** Merged ranges, "A1:C1". */
  readonly merged: readonly string[];
}

/** Scans the sheets of an unpacked workbook (ECMA-376 part 1, SpreadsheetML; from memory), in the workbook's order. */
export function scanSheets(entries: readonly UnzippedEntry[]): readonly SheetScan[] {
  const texts = new Map(
    entries.filter(({ name }) => /\.(xml|rels)$/.test(name)).map(({ name, bytes }) => [name, bytes]),
  );
  const textOf = (name: string): string => new TextDecoder().decode(texts.get(name) ?? new Uint8Array());
  const targets = new Map(
    tagsOf(textOf("xl/_rels/workbook.xml.rels"), "Relationship").map((tag) => [
      attribute(tag, "Id"),
      attribute(tag, "Target"),
    ]),
  );
  return tagsOf(textOf("xl/workbook.xml"), "sheet").map((tag) => {
    const target = targets.get(attribute(tag, "relation")) ?? "";
    const path = target.startsWith("/") ? target.slice(1) : `xl/${target}`;
    return scanSheet(unescaped(attribute(tag, "name")), textOf(path));
  });
}

function scanSheet(name: string, xml: string): SheetScan {
  const uncomputed = new Set<string>();
  const errors = new Map<string, string>();
  for (const { head, body } of cellsOf(xml)) {
    const kind = attribute(head, "t");
    const value = valueOf(body);
    if (kind === "e") errors.set(attribute(head, "r"), unescaped(value ?? ""));
    else if (FORMULA.test(body) && isMissing(value, kind)) uncomputed.add(attribute(head, "r"));
  }
  return { name, uncomputed, errors, merged: tagsOf(xml, "mergeCell").map((tag) => attribute(tag, "ref")) };
}

const FORMULA = /<(?:[\w.-]+:)?f[\s>/]/;
const VALUE = /<(?:[\w.-]+:)?v(?:\s[^>]*)?(?:\/>|>([^<]*)<)/;

/** The stored value of a cell as written; null without a place for one. */
function valueOf(body: string): string | null {
  const found = VALUE.exec(body);
  return found === null ? null : (found[1] ?? "");
}

/** A formula whose result is empty text is stored as text ("str") of no length: computed all the same. */
const isMissing = (value: string | null, kind: string): boolean =>
  kind === "str" ? value === null : (value ?? "") === "";

/** Cells with content, one after the other; linear in the length of the text. */
function* cellsOf(xml: string): Generator<{ readonly head: string; readonly body: string }> {
  const opening = /<([\w.-]+:)?c(?=[\s/>])([^>]*)>/g;
  for (let found = opening.exec(xml); found !== null; found = opening.exec(xml)) {
    const [, prefix = "", head = ""] = found;
    if (head.endsWith("/")) continue;
    const end = xml.indexOf(`</${prefix}c>`, opening.lastIndex);
    if (end < 0) return;
    yield { head, body: xml.slice(opening.lastIndex, end) };
    opening.lastIndex = end;
  }
}

function tagsOf(xml: string, tag: string): readonly string[] {
  return [...xml.matchAll(new RegExp(`<(?:\\w+:)?${tag}\\b([^>]*)>`, "g"))].map(
    ([, attributes = ""]) => attributes,
  );
}

/** Patterns of the attributes that are read; the relationship's prefix is the file's own choice. */
const ATTRIBUTES = {
  Id: attributePattern("Id"),
  Target: attributePattern("Target"),
  relation: attributePattern("[\\w.-]+:id"),
  name: attributePattern("name"),
  r: attributePattern("r"),
  t: attributePattern("t"),
  ref: attributePattern("ref"),
};

function attributePattern(name: string): RegExp {
  return new RegExp(`(?:^|\\s)${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`);
}

function attribute(attributes: string, name: keyof typeof ATTRIBUTES): string {
  const found = ATTRIBUTES[name].exec(attributes);
  return found?.[1] ?? found?.[2] ?? "";
}

function unescaped(text: string): string {
  return text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, "&");
}

/** "B7" as row and column counted from 0; null for anything else. */
export function placeOf(address: string): { readonly row: number; readonly column: number } | null {
  const found = /^([A-Z]{1,3})(\d+)$/.exec(address);
  if (found === null) return null;
  const column = [...(found[1] ?? "")].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(found[2]) - 1, column };
}
