import type { Cell } from "../ports/table.ts";
import { readDecimal, readWhole } from "./cell-number.ts";
import { plainText, read, unreadable } from "./cell-text.ts";
import type { Reading } from "./cell-text.ts";

const WEEKDAYS = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] as const;

/** Yes or no, as people write it; a blank cell never comes here. */
export function readYesNo(cell: Cell): Reading<boolean> {
  if (typeof cell === "boolean") return read(cell);
  const text = plainText(cell).toLowerCase();
  if (["yes", "y", "true", "1", "x"].includes(text)) return read(true);
  if (["no", "n", "false", "0", "-"].includes(text)) return read(false);
  return unreadable("neither-yes-nor-no");
}

/** Items parted by semicolons; empty items vanish. */
export function readList(cell: Cell): Reading<readonly string[]> {
  return read(
    plainText(cell)
      .split(";")
      .map((item) => item.trim())
      .filter((item) => item !== ""),
  );
}

/** Whole numbers parted by semicolons, as `readWhole` reads them, empty places 0. */
export function readCounts(cell: Cell): Reading<readonly number[]> {
  if (!plainText(cell).includes(";")) {
    const alone = readWhole(cell);
    return alone.ok ? read([alone.value]) : alone;
  }
  const counts: number[] = [];
  for (const item of plainText(cell).replace(/;\s*$/, "").split(";")) {
    // a place left empty keeps the ones behind it in theirs
    const count = item.trim() === "" ? read(0) : readWhole(item);
    if (!count.ok) return count;
    counts.push(count.value);
  }
  return read(counts);
}

/** Weekdays as ISO numbers: "Mon-Fri", "Sun,Mon", "1-5", "Fri-Sun"; a range may pass the week's end. */
export function readWeekdays(cell: Cell): Reading<readonly number[]> {
  const days = new Set<number>();
  for (const part of plainText(cell)
    .toLowerCase()
    .split(/[,;+ ]+/)
    .filter((item) => item !== "")) {
    const [from, to, ...rest] = part.split(/[-–]/).map(weekday);
    const end = to ?? from;
    if (from === undefined || from === null || end === undefined || end === null || rest.length > 0) {
      return unreadable("no-weekdays");
    }
    for (let step = 0; step <= (end - from + 7) % 7; step++) days.add(((from - 1 + step) % 7) + 1);
  }
  if (days.size === 0) return unreadable("no-weekdays");
  return read([...days].sort((a, b) => a - b));
}

function weekday(text: string): number | null {
  if (/^[1-7]$/.test(text)) return Number(text);
  const index = WEEKDAYS.findIndex((name) => text.startsWith(name));
  return index < 0 ? null : index + 1;
}

/** Weekdays as they are written: "Mon,Tue". */
export function weekdaysText(days: readonly number[]): string {
  return days
    .map((day) => {
      const name = WEEKDAYS[day - 1] ?? "";
      return name.charAt(0).toUpperCase() + name.slice(1);
    })
    .join(",");
}

/** Breaks as "09:30-10:00; 12:00-12:30". */
export function readBreaks(cell: Cell): Reading<readonly { readonly start: string; readonly end: string }[]> {
  const breaks: { start: string; end: string }[] = [];
  for (const part of plainText(cell)
    .split(";")
    .map((item) => item.trim())
    .filter((item) => item !== "")) {
    const found = /^(\d{1,2}:\d{2})\s*[-–]\s*(\d{1,2}:\d{2})$/.exec(part);
    if (found === null) return unreadable("no-break", { part });
    breaks.push({ start: (found[1] ?? "").padStart(5, "0"), end: (found[2] ?? "").padStart(5, "0") });
  }
  return read(breaks);
}

/** Moulds of a product as "M1; M2/insert". */
export function readMouldChoices(
  cell: Cell,
): Reading<readonly { readonly mouldId: string; readonly insertId: string | null }[]> {
  const items = plainText(cell)
    .split(";")
    .map((item) => item.trim())
    .filter((item) => item !== "");
  if (items.length === 0) return unreadable("no-mould");
  return read(
    items.map((item) => {
      const [mouldId = "", insertId] = item.split("/").map((part) => part.trim());
      return { mouldId, insertId: insertId === undefined || insertId === "" ? null : insertId };
    }),
  );
}

/** Heads by operator pool as "packers/2; loaders/0.5". */
export function readHeads(
  cell: Cell,
): Reading<readonly { readonly poolId: string; readonly heads: number }[]> {
  const list: { poolId: string; heads: number }[] = [];
  for (const item of plainText(cell)
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part !== "")) {
    const slash = item.lastIndexOf("/");
    const heads = slash < 1 ? null : readDecimal(item.slice(slash + 1).trim());
    if (heads === null || !heads.ok) return unreadable("no-heads", { part: item });
    list.push({ poolId: item.slice(0, slash).trim(), heads: heads.value });
  }
  return read(list);
}
