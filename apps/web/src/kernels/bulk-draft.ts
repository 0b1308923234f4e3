import type { BulkChange } from "./bulk-change.ts";
import { decimalIn } from "./order-draft.ts";
import { instantOfWallText, wireText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** Changes of many orders that take a value. */
export const bulkKinds = [
  "due shifted",
  "due set",
  "earliest shifted",
  "earliest set",
  "weight set",
  "kind set",
  "parts set",
] as const satisfies readonly BulkChange["kind"][];
export type BulkKind = (typeof bulkKinds)[number];

/** What a value is of: how it is written, and what to say where it cannot be read. */
export function valueOfBulk(kind: BulkKind): "days" | "at" | "weight" | "kind" | "parts" {
  switch (kind) {
    case "due shifted":
    case "earliest shifted":
      return "days";
    case "due set":
    case "earliest set":
      return "at";
    case "weight set":
      return "weight";
    case "kind set":
      return "kind";
    case "parts set":
      return "parts";
  }
}

const mostDays = 3650;

/** The change that a choice and its written value stand for; null where the value cannot be read. */
export function readBulk(kind: BulkKind, value: string, clock: ZoneClock): BulkChange | null {
  const text = value.trim();
  switch (kind) {
    case "due shifted":
    case "earliest shifted": {
      const days = /^[+-]?\d+$/.test(text.replace("−", "-")) ? Number(text.replace("−", "-")) : 0;
      return days === 0 || Math.abs(days) > mostDays ? null : { kind, days };
    }
    case "due set": {
      const at = instantOfWallText(clock, text);
      return at === null ? null : { kind, at: wireText(at) };
    }
    case "earliest set": {
      const at = text === "" ? null : instantOfWallText(clock, text);
      if (at === null) return text === "" ? { kind, at } : null;
      return { kind, at: wireText(at) };
    }
    case "weight set": {
      const weight = decimalIn(text);
      return weight === undefined || weight > 1000 ? null : { kind, weight };
    }
    case "kind set":
      return text === "firm" || text === "forecast" ? { kind, value: text } : null;
    case "parts set":
      return text === "yes" || text === "no" ? { kind, isAllowed: text === "yes" } : null;
  }
}
