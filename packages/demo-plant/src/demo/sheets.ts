import { Sheet } from "@formweek/capacity-model";

const colours = {
  clear: { name: "clear", hex: "#dfeaf0", darkness: 0, clear: true },
  natural: { name: "natural", hex: "#f3ecdd", darkness: 5, clear: false },
  white: { name: "white", hex: "#ffffff", darkness: 10, clear: false },
  green: { name: "green", hex: "#4e8a5f", darkness: 60, clear: false },
  red: { name: "red", hex: "#c23a2c", darkness: 50, clear: false },
  black: { name: "black", hex: "#26282a", darkness: 100, clear: false },
} as const;

interface SheetRow {
  readonly id: string;
  readonly polymer: "PP" | "PS" | "APET";
  readonly thicknessMm: number;
  readonly widthMm: 930 | 730;
  readonly colour: keyof typeof colours;
  readonly stockKg: number;
  readonly arrivals: readonly { readonly at: string; readonly kg: number }[];
}

const rows: readonly SheetRow[] = [
  {
    id: "PP12-930-natural",
    polymer: "PP",
    thicknessMm: 1.2,
    widthMm: 930,
    colour: "natural",
    stockKg: 60_000,
    arrivals: [
      { at: "2026-12-02T10:00", kg: 60_000 },
      { at: "2026-12-07T10:00", kg: 60_000 },
    ],
  },
  {
    id: "PP12-930-white",
    polymer: "PP",
    thicknessMm: 1.2,
    widthMm: 930,
    colour: "white",
    stockKg: 80_000,
    arrivals: [{ at: "2026-12-03T10:00", kg: 80_000 }],
  },
  {
    id: "PP12-930-black",
    polymer: "PP",
    thicknessMm: 1.2,
    widthMm: 930,
    colour: "black",
    stockKg: 24_000,
    arrivals: [{ at: "2026-12-02T06:00", kg: 60_000 }],
  },
  {
    id: "PP15-930-white",
    polymer: "PP",
    thicknessMm: 1.5,
    widthMm: 930,
    colour: "white",
    stockKg: 70_000,
    arrivals: [{ at: "2026-12-04T08:00", kg: 60_000 }],
  },
  {
    id: "PP15-930-natural",
    polymer: "PP",
    thicknessMm: 1.5,
    widthMm: 930,
    colour: "natural",
    stockKg: 70_000,
    arrivals: [{ at: "2026-12-04T08:00", kg: 60_000 }],
  },
  {
    id: "PS10-930-white",
    polymer: "PS",
    thicknessMm: 1.0,
    widthMm: 930,
    colour: "white",
    stockKg: 90_000,
    arrivals: [],
  },
  {
    id: "PP09-730-natural",
    polymer: "PP",
    thicknessMm: 0.9,
    widthMm: 730,
    colour: "natural",
    stockKg: 70_000,
    arrivals: [{ at: "2026-12-03T12:00", kg: 40_000 }],
  },
  {
    id: "PP09-730-white",
    polymer: "PP",
    thicknessMm: 0.9,
    widthMm: 730,
    colour: "white",
    stockKg: 70_000,
    arrivals: [],
  },
  {
    id: "PP14-730-white",
    polymer: "PP",
    thicknessMm: 1.4,
    widthMm: 730,
    colour: "white",
    stockKg: 80_000,
    arrivals: [],
  },
  {
    id: "PP14-730-green",
    polymer: "PP",
    thicknessMm: 1.4,
    widthMm: 730,
    colour: "green",
    stockKg: 18_000,
    arrivals: [{ at: "2026-12-02T14:00", kg: 50_000 }],
  },
  {
    id: "PS08-730-red",
    polymer: "PS",
    thicknessMm: 0.8,
    widthMm: 730,
    colour: "red",
    stockKg: 50_000,
    arrivals: [],
  },
  {
    id: "APET04-730-clear",
    polymer: "APET",
    thicknessMm: 0.4,
    widthMm: 730,
    colour: "clear",
    stockKg: 60_000,
    arrivals: [{ at: "2026-12-04T06:00", kg: 40_000 }],
  },
];

/** Twelve sheets of the demo plant; invented. */
export const demoSheets: readonly Sheet[] = rows.map((row) =>
  Sheet.parse({
    id: row.id,
    name: `${row.polymer} ${row.thicknessMm.toFixed(1)} × ${String(row.widthMm)} ${row.colour}`,
    polymer: row.polymer,
    thicknessMm: row.thicknessMm,
    widthMm: row.widthMm,
    colour: colours[row.colour],
    reelKg: row.widthMm === 930 ? 900 : 700,
    stockKg: row.stockKg,
    arrivals: row.arrivals,
  }),
);
