import { tzOffset } from "@date-fns/tz";
import { SECONDS_PER_DAY, isoWeekDateOf, localDateTimeText, parseLocalDateTime } from "./civil-date.ts";
import type { IsoWeekDate } from "./civil-date.ts";

/**
 * The plant's wall clock. The only file that asks the runtime for zone data; everything else reckons in instants
 * (integer seconds since the epoch, UTC) or in wall-clock seconds (the same count, as if the wall clock ran in UTC).
 *
 * A wall-clock time that the clock change skips is moved forward by the length of the gap (02:30 becomes 03:30 where
 * 02:00–03:00 is skipped); one that occurs twice means the first occurrence. Both as in iCalendar, RFC 5545 section 3.3.5.
 */

/** Offsets are kept by spells of about six days; no zone of the IANA data since 1970 changes twice within one. */
const SPELL_SECONDS = 524_288;

interface OffsetSpell {
  readonly before: number;
  /** First instant of the later offset; infinite where the spell has one offset. */
  readonly changeAt: number;
  readonly after: number;
}

/** Memory of what the runtime answered: the same question always has the same answer, so results do not depend on it. */
const spellsByZone = new Map<string, Map<number, OffsetSpell>>();

/** True when the runtime knows the IANA zone, e.g. "Europe/Berlin" or "UTC"; bare offsets such as "+01:00" are no zones. */
export function isKnownTimeZone(zone: string): boolean {
  return /^[A-Za-z]/.test(zone) && Number.isFinite(tzOffset(zone, new Date(0)));
}

/** Offset of local time from UTC at an instant, in seconds, east positive. The zone must be known. */
export function offsetSecondsAt(zone: string, at: number): number {
  const spell = offsetSpell(zone, Math.floor(at / SPELL_SECONDS));
  return at < spell.changeAt ? spell.before : spell.after;
}

/** Wall-clock seconds that a clock in the zone shows at an instant. */
export function wallSecondsAt(zone: string, at: number): number {
  return at + offsetSecondsAt(zone, at);
}

/** Instant of wall-clock seconds in the zone; gaps shift forward, of two occurrences the first counts. */
export function instantOfWall(zone: string, wallSeconds: number): number {
  const earlier = offsetSecondsAt(zone, wallSeconds - SECONDS_PER_DAY);
  const later = offsetSecondsAt(zone, wallSeconds + SECONDS_PER_DAY);
  const byEarlier = wallSeconds - earlier;
  if (earlier === later || offsetSecondsAt(zone, byEarlier) === earlier) return byEarlier;
  const byLater = wallSeconds - later;
  return offsetSecondsAt(zone, byLater) === later ? byLater : byEarlier;
}

/** True for wall-clock seconds that no clock in the zone shows, since a clock change skips them. */
export function isSkippedWall(zone: string, wallSeconds: number): boolean {
  return wallSecondsAt(zone, instantOfWall(zone, wallSeconds)) !== wallSeconds;
}

/** Instant of "YYYY-MM-DDTHH:MM" in the zone; null when the text is no such time. */
export function instantOfLocalText(zone: string, text: string): number | null {
  const wallSeconds = parseLocalDateTime(text);
  return wallSeconds === null ? null : instantOfWall(zone, wallSeconds);
}

/** "YYYY-MM-DDTHH:MM" that a clock in the zone shows at an instant (":SS" added only where not zero). */
export function localTextAt(zone: string, at: number): string {
  return localDateTimeText(wallSecondsAt(zone, at));
}

/** The same with its offset from UTC, RFC 3339: "2026-10-25T02:30:00+01:00", one instant also where a clock change repeats the hour. */
export function rfc3339At(zone: string, at: number): string {
  const text = localTextAt(zone, at);
  const seconds = text.length === "YYYY-MM-DDTHH:MM".length ? ":00" : "";
  const offset = offsetSecondsAt(zone, at);
  const minutes = Math.abs(Math.round(offset / 60));
  const [hour, minute] = [Math.floor(minutes / 60), minutes % 60].map((part) =>
    String(part).padStart(2, "0"),
  );
  return `${text}${seconds}${offset < 0 ? "-" : "+"}${hour ?? "00"}:${minute ?? "00"}`;
}

/** Number of the local day that holds an instant, counted from 1970-01-01. */
export function localDayAt(zone: string, at: number): number {
  return Math.floor(wallSecondsAt(zone, at) / SECONDS_PER_DAY);
}

/** First instant of a local day; a day that the zone skipped starts with the next one. */
export function startOfLocalDay(zone: string, dayNumber: number): number {
  return instantOfWall(zone, dayNumber * SECONDS_PER_DAY);
}

/** ISO 8601 week of the local day that holds an instant. */
export function isoWeekAt(zone: string, at: number): IsoWeekDate {
  return isoWeekDateOf(localDayAt(zone, at));
}

function offsetSpell(zone: string, index: number): OffsetSpell {
  let spells = spellsByZone.get(zone);
  if (spells === undefined) {
    spells = new Map();
    spellsByZone.set(zone, spells);
  }
  let spell = spells.get(index);
  if (spell === undefined) {
    spell = askOffsetSpell(zone, index * SPELL_SECONDS);
    spells.set(index, spell);
  }
  return spell;
}

function askOffsetSpell(zone: string, start: number): OffsetSpell {
  const before = askOffset(zone, start);
  const after = askOffset(zone, start + SPELL_SECONDS - 1);
  if (before === after) return { before, changeAt: Number.POSITIVE_INFINITY, after };
  let low = start;
  let high = start + SPELL_SECONDS - 1;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (askOffset(zone, middle) === before) low = middle;
    else high = middle;
  }
  return { before, changeAt: high, after };
}

function askOffset(zone: string, at: number): number {
  return Math.round(tzOffset(zone, new Date(at * 1000)) * 60);
}
