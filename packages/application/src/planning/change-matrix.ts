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
  const signatures = states.map(signatureOf);
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
    changeClasses.push({ id, matrix: matrixOf({ terms, states, signatures, specs }) });
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
  readonly signatures: readonly string[];
  readonly specs: SpecTable;
}

function matrixOf({ terms, states, signatures, specs }: MatrixInput): readonly (readonly number[])[] {
  const cache = new Map<string, number>();
  return states.map((from, fromIndex) =>
    states.map((to, toIndex) => {
      if (fromIndex === toIndex) return -1;
      const key = `${signatures[fromIndex] ?? ""}>${signatures[toIndex] ?? ""}${relation(from, to)}`;
      const known = cache.get(key);
      if (known !== undefined) return known;
      const change = changeBetween({ ...terms, from, to });
      const index = change === null ? -1 : specs.indexOf(change);
      cache.set(key, index);
      return index;
    }),
  );
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

/** What they see of two states together. */
function relation(from: LineState, to: LineState): string {
  const mould = from.mould?.id === to.mould?.id ? "=" : from.mould?.family === to.mould?.family ? "~" : "#";
  return `${mould}${from.insertId === to.insertId ? "=" : "#"}`;
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
