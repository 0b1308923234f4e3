import { addWorking, nextOpening, workingBetween } from "@formweek/capacity-model";
import type { Plant, Product, WorkingTime } from "@formweek/capacity-model";
import { planStart, makeableRates, lineWorkingTimes } from "./plant-rates.ts";
import type { MakeableRate } from "./plant-rates.ts";

/** Where a drawn order would roughly run. */
export interface Placement {
  readonly pieces: number;
  readonly end: number;
  /** Start of the plan, from which due times are stepped. */
  readonly origin: number;
  /** An earliest start that does not push the rough start, in whole shifts from the origin. */
  readonly earliest: number;
}

const CHANGE_ALLOWANCE_SECONDS = 4500;
const SHIFT_SECONDS = 8 * 3600;

/** A greedy picture of lines and mould copies, good enough to draw orders that a real schedule can meet. */
export class RoughSchedule {
  readonly #origin: number;
  readonly #days: number;
  readonly #rates: ReadonlyMap<string, readonly MakeableRate[]>;
  readonly #working: ReadonlyMap<string, WorkingTime>;
  readonly #lineFree = new Map<string, number>();
  readonly #lineMould = new Map<string, string>();
  readonly #copyFree = new Map<string, number[]>();

  constructor(plant: Plant, days: number) {
    this.#origin = planStart(plant);
    this.#days = days;
    this.#rates = makeableRates(plant);
    this.#working = lineWorkingTimes(plant);
    for (const line of plant.lines) {
      this.#lineFree.set(line.id, this.#origin);
      if (line.mounted.mouldId !== null) this.#lineMould.set(line.id, line.mounted.mouldId);
    }
    for (const mould of plant.moulds)
      this.#copyFree.set(
        mould.id,
        Array.from({ length: mould.copies }, () => this.#origin),
      );
  }

  canMake(product: Product): boolean {
    return (this.#rates.get(product.id)?.length ?? 0) > 0;
  }

  /** Mean share of the lines' working time in the drawn days that is taken. */
  loadShare(): number {
    const until = this.#origin + this.#days * 86_400;
    let taken = 0;
    let open = 0;
    for (const [lineId, freeAt] of this.#lineFree) {
      const working = this.#working.get(lineId);
      if (working === undefined) continue;
      open += workingBetween(working, this.#origin, until);
      taken += workingBetween(working, this.#origin, Math.min(freeAt, until));
    }
    return open === 0 ? 1 : taken / open;
  }

  /** Lays `hours` of the product where it ends first; null when no line has the time. */
  place(product: Product, hours: number): Placement | null {
    let best: { rate: MakeableRate; start: number; end: number; copy: number; pieces: number } | null = null;
    for (const rate of this.#rates.get(product.id) ?? []) {
      const working = this.#working.get(rate.lineId);
      const copies = this.#copyFree.get(rate.mouldId);
      if (working === undefined || copies === undefined) continue;
      const copy = copies.indexOf(Math.min(...copies));
      const change = this.#lineMould.get(rate.lineId) === rate.mouldId ? 600 : CHANGE_ALLOWANCE_SECONDS;
      const free = nextOpening(working, Math.max(this.#lineFree.get(rate.lineId) ?? 0, copies[copy] ?? 0));
      const pieces = wholeUnits(product, hours * rate.piecesPerHour);
      const start = free === null ? null : addWorking(working, free, change);
      const end =
        start === null ? null : addWorking(working, start, (pieces / rate.piecesPerHour) * 3600 + 1);
      if (start === null || end === null) continue;
      if (best === null || end < best.end) best = { rate, start, end: Math.ceil(end), copy, pieces };
    }
    if (best === null) return null;
    this.#lineFree.set(best.rate.lineId, best.end);
    this.#lineMould.set(best.rate.lineId, best.rate.mouldId);
    const copies = this.#copyFree.get(best.rate.mouldId);
    if (copies !== undefined) copies[best.copy] = best.end + 1800;
    const shifts = Math.max(0, Math.floor((best.start - this.#origin) / SHIFT_SECONDS) - 1);
    return {
      pieces: best.pieces,
      end: best.end,
      origin: this.#origin,
      earliest: this.#origin + shifts * SHIFT_SECONDS,
    };
  }
}

/** Rounds to whole cartons: customers order cartons, not pieces. */
function wholeUnits(product: Product, pieces: number): number {
  const carton = product.piecesPerStack * product.stacksPerCarton;
  const whole = Math.max(1, Math.round(pieces / carton)) * carton;
  return Math.max(whole, Math.ceil(product.leastRunPieces / carton) * carton);
}
