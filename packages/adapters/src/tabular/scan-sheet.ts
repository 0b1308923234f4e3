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
    const target = targets.get(attribute(tag, "r:id")) ?? "";
    const path = target.startsWith("/") ? target.slice(1) : `xl/${target}`;
    return scanSheet(unescaped(attribute(tag, "name")), textOf(path));
  });
}

function scanSheet(name: string, xml: string): SheetScan {
  const uncomputed = new Set<string>();
  const errors = new Map<string, string>();
  for (const { head, body } of cellsOf(xml)) {
    const value = between(body, "<v>", "</v>");
    if (attribute(head, "t") === "e") errors.set(attribute(head, "r"), unescaped(value));
    else if (/<f[\s>/]/.test(body) && value === "" && !body.includes("<is>"))
      uncomputed.add(attribute(head, "r"));
  }
  return { name, uncomputed, errors, merged: tagsOf(xml, "mergeCell").map((tag) => attribute(tag, "ref")) };
}

/** Cells with content, one after the other; linear in the length of the text. */
function* cellsOf(xml: string): Generator<{ readonly head: string; readonly body: string }> {
  for (let at = xml.indexOf("<c "); at >= 0;) {
    const close = xml.indexOf(">", at);
    if (close < 0) return;
    if (xml.charAt(close - 1) === "/") {
      at = xml.indexOf("<c ", close);
      continue;
    }
    const end = xml.indexOf("</c>", close);
    if (end < 0) return;
    yield { head: xml.slice(at + 2, close), body: xml.slice(close + 1, end) };
    at = xml.indexOf("<c ", end);
  }
}

function between(text: string, from: string, to: string): string {
  const start = text.indexOf(from);
  const end = start < 0 ? -1 : text.indexOf(to, start);
  return end < 0 ? "" : text.slice(start + from.length, end);
}

function tagsOf(xml: string, tag: string): readonly string[] {
  return [...xml.matchAll(new RegExp(`<(?:\\w+:)?${tag}\\b([^>]*)>`, "g"))].map(
    ([, attributes = ""]) => attributes,
  );
}

function attribute(attributes: string, name: string): string {
  return new RegExp(`(?:^|\\s)${name}="([^"]*)"`).exec(attributes)?.[1] ?? "";
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
