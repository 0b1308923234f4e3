import { changeBetween, rulesForLine } from "@formweek/capacity-model";
import type { ChangeRequest, FormingLine, LineState, Plant } from "@formweek/capacity-model";
import type { ChangeClass, ChangeSpec } from "@formweek/scheduler";

/** Change matrices for all lines of a plant over one numbering of states. */
export interface ChangeMatrices {
  readonly changes: readonly ChangeSpec[];
  readonly changeClasses: readonly ChangeClass[];
  /** Change class per line id. */
  readonly classOfLine: ReadonlyMap<string, string>;
}

/** Setters that every team has at least: a change is planned so that any team can do it in the time. */
function settersOfSmallestTeam(plant: Plant): number {
  return (
    plant.setterTeams.reduce((least, team) => Math.min(least, team.setters), Number.POSITIVE_INFINITY) || 1
  );
}

/** What `changeBetween` asks of a line; lines that agree in it share one matrix. Null: no rules hold for the line. */
export function changeTerms(plant: Plant, line: FormingLine): Omit<ChangeRequest, "from" | "to"> | null {
  const rules = rulesForLine(plant.changeoverRules, line.id);
  const setters = settersOfSmallestTeam(plant);
  return rules === null
    ? null
    : { line, rules, polymers: plant.polymers, setters: Number.isFinite(setters) ? setters : 1 };
}

/**
 * Works out every change between two states on every kind of line. Equal changes share one spec; pairs of states that
 * look alike to the changeover rules are worked out once, so that thousands of pairs stay quick.
 */
export function changeMatrices(plant: Plant, states: readonly LineState[]): ChangeMatrices {
  const specs = new SpecTable();
  const views = viewsOf(states);
  const changeClasses: ChangeClass[] = [];
  const classByTerms = new Map<string, string>();
  const classOfLine = new Map<string, string>();
  for (const line of plant.lines) {
    const terms = changeTerms(plant, line);
    if (terms === null) continue;
    const key = changeClassKey(plant, terms);
    const known = classByTerms.get(key);
    const id = known ?? `C${String(changeClasses.length + 1)}`;
    classOfLine.set(line.id, id);
    if (known !== undefined) continue;
    classByTerms.set(key, id);
    changeClasses.push({ id, matrix: matrixOf({ terms, states, views, specs }) });
  }
  return { changes: specs.specs, changeClasses, classOfLine };
}

/** Equal for lines whose changes take the same. */
export function changeClassKey(plant: Plant, { line, rules }: Omit<ChangeRequest, "from" | "to">): string {
  return [
    plant.changeoverRules.indexOf(rules),
    line.loadingSide,
    line.extruderFlowKgPerH !== null,
    line.trolleyId !== null,
  ].join("|");
}

interface MatrixInput {
  readonly terms: Omit<ChangeRequest, "from" | "to">;
  readonly states: readonly LineState[];
  /** One a state. */
  readonly views: readonly StateView[];
  readonly specs: SpecTable;
}

function matrixOf({ terms, states, views, specs }: MatrixInput): readonly (readonly number[])[] {
  // from what is taken down to what is put up, one table each: numbers as keys, for there are millions of pairs
  const known: Map<number, number>[] = [];
  return states.map((from, fromIndex) => {
    const one = views[fromIndex]!;
    const row = (known[one.look] ??= new Map<number, number>());
    return states.map((to, toIndex) => {
      if (fromIndex === toIndex) return -1;
      const other = views[toIndex]!;
      const key = other.look * RELATIONS + relation(one, other);
      const found = row.get(key);
      if (found !== undefined) return found;
      const change = changeBetween({ ...terms, from, to });
      const index = change === null ? -1 : specs.indexOf(change);
      row.set(key, index);
      return index;
    });
  });
}

/** A state as the changeover rules see it; equal numbers for what looks equal. */
interface StateView {
  /** All that they see of it alone. */
  readonly look: number;
  readonly mould: number;
  readonly family: number;
  readonly insert: number;
}

function viewsOf(states: readonly LineState[]): readonly StateView[] {
  const [looks, moulds, families, inserts] = [numbering(), numbering(), numbering(), numbering()];
  return states.map((state) => ({
    look: looks(signatureOf(state)),
    mould: moulds(state.mould?.id),
    family: families(state.mould?.family),
    insert: inserts(state.insertId),
  }));
}

/** Counts up from 0, the same number for the same value. */
function numbering(): (value: unknown) => number {
  const numbers = new Map<unknown, number>();
  return (value) => {
    const known = numbers.get(value) ?? numbers.size;
    numbers.set(value, known);
    return known;
  };
}

/** All that the changeover rules see of one state, names left out. */
function signatureOf({ mould, sheet, stackerTooling, rimTooling, packing }: LineState): string {
  const ofMould =
    mould === null
      ? ""
      : [mould.massKg, mould.heatUpMinutes, mould.preheatable, mould.indexLengthMm].join(",");
  const ofPacking =
    packing === null
      ? ""
      : [packing.piecesPerStack, packing.stacksPerCarton, packing.cartonsPerPallet].join(",");
  return [ofMould, sheet?.id ?? "", stackerTooling ?? "", rimTooling ?? "", ofPacking].join("/");
}

/** How many answers `relation` has. */
const RELATIONS = 6;

/** What they see of two states together. */
function relation(from: StateView, to: StateView): number {
  const mould = from.mould === to.mould ? 0 : from.family === to.family ? 1 : 2;
  return 2 * mould + (from.insert === to.insert ? 0 : 1);
}

class SpecTable {
  readonly specs: ChangeSpec[] = [];
  readonly #known = new Map<string, number>();

  indexOf({ dismountSeconds, mountSeconds, tailSeconds, usesTrolley, scrapKg }: ChangeSpec): number {
    const key = [dismountSeconds, mountSeconds, tailSeconds, usesTrolley, scrapKg].join("|");
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    this.#known.set(key, this.specs.length);
    this.specs.push({ dismountSeconds, mountSeconds, tailSeconds, usesTrolley, scrapKg });
    return this.specs.length - 1;
  }
}
