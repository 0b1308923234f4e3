import type { BookedOrder, ScenarioChange } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { madePlant } from "../fixtures/made-plant.ts";
import { zoneClock } from "../kernels/zone-clock.ts";
import { languages, type Language } from "../text/languages.ts";
import { formatFor } from "./format.ts";
import { scenarioChangeWords, type ScenarioWords } from "./scenario-words.ts";

const booked: BookedOrder = {
  ...madeOrder({ id: "70112", productId: "C75-white", pieces: 185_000 }),
  kind: "firm",
  state: "late",
  finish: null,
  slackSeconds: null,
  fromStockPieces: null,
  toMakePieces: null,
  reasons: [],
};

function wordsIn(language: Language): ScenarioWords {
  const { locale, text } = languages[language];
  return {
    plant: madePlant(),
    orders: new Map([[booked.id, booked]]),
    clock: zoneClock("Europe/Berlin"),
    text,
    format: formatFor({ locale, text, timeZone: "Europe/Berlin", currency: "EUR" }),
  };
}

const changes: readonly (readonly [ScenarioChange, en: string, de: string])[] = [
  [
    {
      kind: "close line",
      closure: { lineId: "L01", from: "2026-12-01T06:00", to: "2026-12-03T14:00", reason: "bearing" },
    },
    "Line 1 stands Tue 1 Dec 06:00 – Thu 3 Dec 14:00: bearing",
    "Line 1 steht Di. 1. Dez. 06:00 – Do. 3. Dez. 14:00: bearing",
  ],
  [
    {
      kind: "close line",
      closure: { lineId: "L09", from: "2026-12-01T06:00", to: "2026-12-01T14:00", reason: "bearing" },
    },
    "L09 stands Tue 1 Dec 06:00–14:00: bearing",
    "L09 steht Di. 1. Dez. 06:00–14:00: bearing",
  ],
  [
    {
      kind: "add shift",
      shift: {
        date: "2026-12-05",
        name: "Early",
        start: "06:00",
        end: "14:00",
        breaks: [],
        lineIds: ["L01", "L02"],
        teamIds: ["S1"],
        operators: [{ poolId: "B1", heads: 1.5 }],
      },
    },
    "Extra shift on Sat 5 Dec, 06:00–14:00: Line 1, Line 2, Setters early, 1.5 operators",
    "Zusatzschicht am Sa. 5. Dez., 06:00–14:00: Line 1, Line 2, Setters early, 1,5 Bediener",
  ],
  [
    { kind: "more copies", mouldId: "C75-24", more: 1 },
    "One more set of Cup 75, 24 cavities",
    "Ein Satz Cup 75, 24 cavities mehr",
  ],
  [
    { kind: "more copies", mouldId: "C75-24", more: 2 },
    "2 more sets of Cup 75, 24 cavities",
    "2 Sätze Cup 75, 24 cavities mehr",
  ],
  [
    {
      kind: "another team",
      likeTeamId: "S1",
      name: "Team C",
      from: "2026-12-01T05:00:00Z",
      to: "2026-12-01T13:00:00Z",
    },
    "Team C sets up beside Setters early, Tue 1 Dec 06:00–14:00",
    "Team C rüstet neben Setters early, Di. 1. Dez. 06:00–14:00",
  ],
  [
    { kind: "cancel order", orderId: "70112" },
    "Order 70112 is cancelled (Alder Foods, Cup 75 white, 185,000 pieces)",
    "Auftrag 70112 entfällt (Alder Foods, Cup 75 white, 185.000 Stück)",
  ],
  [{ kind: "cancel order", orderId: "gone" }, "Order gone is cancelled", "Auftrag gone entfällt"],
  [
    { kind: "rush order", order: madeOrder({ id: "R1", productId: "C75-white" }) },
    "New order R1: 40,000 pieces of Cup 75 white, due Thu 3 Dec 12:00",
    "Neuer Auftrag R1: 40.000 Stück Cup 75 white, fällig Do. 3. Dez. 12:00",
  ],
  [
    { kind: "change order", orderId: "70112", pieces: 120_000, dueAt: "2026-12-04T11:00:00Z" },
    "Order 70112: 120,000 pieces instead of 185,000, due Fri 4 Dec 12:00 instead of Thu 3 Dec 12:00",
    "Auftrag 70112: 120.000 Stück statt 185.000, fällig Fr. 4. Dez. 12:00 statt Do. 3. Dez. 12:00",
  ],
  [
    { kind: "change order", orderId: "gone", pieces: 5, dueAt: null },
    "Order gone: 5 pieces",
    "Auftrag gone: 5 Stück",
  ],
  [
    { kind: "cycle rate", lineId: "L02", mouldId: "T180-8", cyclesPerMin: 21.5 },
    "Tray 180, 8 cavities runs on Line 2 at 21.5 cycles/min",
    "Tray 180, 8 cavities läuft auf Line 2: 21,5 Takte/min",
  ],
];

describe("a change of a scenario as a sentence", () => {
  it.each(changes)("says %j", (change, en, de) => {
    expect(scenarioChangeWords(change, wordsIn("en"))).toBe(en);
    expect(scenarioChangeWords(change, wordsIn("de"))).toBe(de);
  });
});
