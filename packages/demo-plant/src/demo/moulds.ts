import type { Mould } from "@formweek/capacity-model";
import { mouldOfShape } from "../mould-shape.ts";
import type { MouldShape } from "../mould-shape.ts";

/** One base: a cavity layout that several depths share. */
interface Base {
  readonly family: string;
  readonly kind: "cup" | "tub" | "lid" | "tray";
  readonly size: readonly [lengthMm: number, widthMm: number];
  readonly along: number;
  readonly across: number;
  readonly depths: readonly (readonly [depthMm: number, copies: number])[];
  /** Rim-rolled cups need it; lids take a plain or a vented insert. */
  readonly inserts: readonly string[];
}

const bases: readonly Base[] = [
  {
    family: "C70-66",
    kind: "cup",
    size: [70, 70],
    along: 6,
    across: 11,
    depths: [
      [80, 2],
      [95, 1],
    ],
    inserts: [],
  },
  {
    family: "C75-60",
    kind: "cup",
    size: [75, 75],
    along: 6,
    across: 10,
    depths: [
      [70, 2],
      [90, 2],
      [110, 1],
    ],
    inserts: [],
  },
  {
    family: "C80-50",
    kind: "cup",
    size: [80, 80],
    along: 5,
    across: 10,
    depths: [
      [100, 1],
      [120, 1],
    ],
    inserts: [],
  },
  {
    family: "C95-40",
    kind: "cup",
    size: [95, 95],
    along: 5,
    across: 8,
    depths: [
      [110, 2],
      [130, 1],
    ],
    inserts: [],
  },
  {
    family: "T120-24",
    kind: "tub",
    size: [120, 120],
    along: 4,
    across: 6,
    depths: [
      [100, 1],
      [130, 1],
    ],
    inserts: [],
  },
  {
    family: "T150-15",
    kind: "tub",
    size: [150, 150],
    along: 3,
    across: 5,
    depths: [
      [90, 1],
      [140, 1],
    ],
    inserts: [],
  },
  {
    family: "T180-12",
    kind: "tub",
    size: [165, 200],
    along: 3,
    across: 4,
    depths: [
      [110, 1],
      [150, 1],
    ],
    inserts: [],
  },
  {
    family: "R260-9",
    kind: "tray",
    size: [170, 260],
    along: 3,
    across: 3,
    depths: [
      [45, 1],
      [60, 1],
    ],
    inserts: [],
  },
  {
    family: "C70-45",
    kind: "cup",
    size: [70, 70],
    along: 5,
    across: 9,
    depths: [
      [75, 2],
      [90, 1],
    ],
    inserts: [],
  },
  {
    family: "C75-40",
    kind: "cup",
    size: [75, 75],
    along: 5,
    across: 8,
    depths: [
      [85, 2],
      [105, 1],
    ],
    inserts: [],
  },
  {
    family: "C80-35",
    kind: "cup",
    size: [80, 80],
    along: 5,
    across: 7,
    depths: [
      [95, 1],
      [110, 1],
    ],
    inserts: [],
  },
  {
    family: "T95-28",
    kind: "tub",
    size: [95, 95],
    along: 4,
    across: 6,
    depths: [
      [60, 1],
      [80, 1],
    ],
    inserts: [],
  },
  {
    family: "T115-20",
    kind: "tub",
    size: [105, 128],
    along: 4,
    across: 5,
    depths: [
      [70, 1],
      [95, 1],
    ],
    inserts: [],
  },
  {
    family: "L75-48",
    kind: "lid",
    size: [78, 78],
    along: 5,
    across: 8,
    depths: [[10, 2]],
    inserts: ["plain", "vented"],
  },
  {
    family: "L95-30",
    kind: "lid",
    size: [98, 98],
    along: 4,
    across: 6,
    depths: [[12, 2]],
    inserts: ["plain", "vented"],
  },
  { family: "L120-20", kind: "lid", size: [124, 124], along: 3, across: 5, depths: [[14, 1]], inserts: [] },
  { family: "L150-8", kind: "lid", size: [154, 154], along: 2, across: 4, depths: [[15, 1]], inserts: [] },
  {
    family: "R140-15",
    kind: "tray",
    size: [140, 125],
    along: 3,
    across: 5,
    depths: [
      [25, 1],
      [40, 1],
      [55, 1],
    ],
    inserts: [],
  },
  {
    family: "R190-8",
    kind: "tray",
    size: [190, 150],
    along: 2,
    across: 4,
    depths: [
      [40, 1],
      [55, 2],
    ],
    inserts: [],
  },
  {
    family: "R220-6",
    kind: "tray",
    size: [220, 210],
    along: 2,
    across: 3,
    depths: [
      [30, 1],
      [50, 1],
    ],
    inserts: [],
  },
];

const names = { cup: "Cup", tub: "Tub", lid: "Lid", tray: "Tray" } as const;

function shapesOf(base: Base): readonly MouldShape[] {
  return base.depths.map(([depthMm, copies]) => ({
    id: `${base.family}-${String(depthMm).padStart(3, "0")}`,
    name: `${names[base.kind]} ${base.family} depth ${String(depthMm)}`,
    family: base.family,
    round: base.kind !== "tray",
    cavityLengthMm: base.size[0],
    cavityWidthMm: base.size[1],
    along: base.along,
    across: base.across,
    depthMm,
    copies,
    rimRolled: base.kind === "cup",
    inserts: base.inserts,
    heatUpMinutes: depthMm > 100 ? 20 : 15,
    preheatable: base.kind !== "tub",
    calibrationFactor: base.kind === "tray" ? 1.25 : 1.1,
    approvedLineIds: base.family === "T180-12" ? ["L8"] : null,
  }));
}

export const demoMouldKinds: ReadonlyMap<string, Base["kind"]> = new Map(
  bases.map((base) => [base.family, base.kind]),
);

/** Forty or so moulds of the demo plant on twenty bases; some exist twice. Invented. */
export const demoMoulds: readonly Mould[] = bases.flatMap(shapesOf).map(mouldOfShape);
