/** One measured number. */
export interface Figure {
  readonly part: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
}

/** Collects figures of one part and prints each as it comes, beside that of an earlier report where there is one. */
export class FigureSheet {
  readonly figures: Figure[] = [];
  readonly #reference: ReadonlyMap<string, number>;

  constructor(reference: readonly Figure[]) {
    this.#reference = new Map(reference.map((figure) => [`${figure.part} ${figure.name}`, figure.value]));
  }

  add(figure: Figure): void {
    this.figures.push(figure);
    const before = this.#reference.get(`${figure.part} ${figure.name}`);
    const beside =
      before === undefined ? "" : `   before ${rounded(before)}, ratio ${rounded(figure.value / before)}`;
    console.log(
      `${figure.part.padEnd(34)}${figure.name.padEnd(48)}${rounded(figure.value).padStart(14)} ${figure.unit}${beside}`,
    );
  }
}

function rounded(value: number): string {
  return Math.abs(value) >= 1000 ? Math.round(value).toString() : Number(value.toPrecision(4)).toString();
}
