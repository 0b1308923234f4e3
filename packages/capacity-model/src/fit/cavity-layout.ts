/** A forming area to fill with round rims. Millimetres; `edgeMm` is kept free all round (0 or more). */
export interface RimArea {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly rimDiameterMm: number;
  /** Sheet left between neighbouring rims; 4 to 12 mm is common practice, no source. */
  readonly webMm: number;
  readonly edgeMm: number;
}

/** Cavities in rows on one pitch. `rowsRun` is the direction of a row; staggered rows are shifted by half a pitch. */
export interface CavityLayout {
  readonly pattern: "square" | "staggered";
  readonly rowsRun: "along" | "across";
  readonly rows: number;
  /** Cavities in odd rows (first, third …) and in even ones; equal in a square pattern. */
  readonly perOddRow: number;
  readonly perEvenRow: number;
  readonly cavities: number;
  /** Room that the rims take, edges included. */
  readonly usedLengthMm: number;
  readonly usedWidthMm: number;
}

/** Most cavities in a square pattern; all counts 0 when not one rim fits. */
export function squareLayout(area: RimArea): CavityLayout {
  const pitchMm = area.rimDiameterMm + area.webMm;
  const along = countIn(free(area.lengthMm, area), pitchMm, area.rimDiameterMm);
  const across = countIn(free(area.widthMm, area), pitchMm, area.rimDiameterMm);
  const cavities = along * across;
  return {
    pattern: "square",
    rowsRun: "across",
    rows: cavities === 0 ? 0 : along,
    perOddRow: cavities === 0 ? 0 : across,
    perEvenRow: cavities === 0 ? 0 : across,
    cavities,
    usedLengthMm: cavities === 0 ? 0 : usedMm(along, pitchMm, area),
    usedWidthMm: cavities === 0 ? 0 : usedMm(across, pitchMm, area),
  };
}

/** Most cavities in a staggered pattern (neighbours on equilateral triangles), rows running along or across; across wins a tie. */
export function staggeredLayout(area: RimArea): CavityLayout {
  const across = staggeredRows(area, "across");
  const along = staggeredRows(area, "along");
  return along.cavities > across.cavities ? along : across;
}

/** The layout with the most cavities; the square one wins a tie, being simpler to build and stack. */
export function fullestLayout(area: RimArea): CavityLayout {
  const square = squareLayout(area);
  const staggered = staggeredLayout(area);
  return staggered.cavities > square.cavities ? staggered : square;
}

function staggeredRows(area: RimArea, rowsRun: "along" | "across"): CavityLayout {
  const pitchMm = area.rimDiameterMm + area.webMm;
  const rowPitchMm = (pitchMm * Math.sqrt(3)) / 2;
  const rowMm = free(rowsRun === "across" ? area.widthMm : area.lengthMm, area);
  const stackMm = free(rowsRun === "across" ? area.lengthMm : area.widthMm, area);
  const rows = countIn(stackMm, rowPitchMm, area.rimDiameterMm);
  const perOddRow = countIn(rowMm, pitchMm, area.rimDiameterMm);
  const perEvenRow = countIn(rowMm - pitchMm / 2, pitchMm, area.rimDiameterMm);
  const cavities = Math.ceil(rows / 2) * perOddRow + Math.floor(rows / 2) * perEvenRow;
  if (cavities === 0)
    return {
      pattern: "staggered",
      rowsRun,
      rows: 0,
      perOddRow: 0,
      perEvenRow: 0,
      cavities,
      usedLengthMm: 0,
      usedWidthMm: 0,
    };
  const shifted = rows > 1 && perEvenRow === perOddRow ? pitchMm / 2 : 0;
  const inRow = usedMm(perOddRow, pitchMm, area) + shifted;
  const inStack = usedMm(rows, rowPitchMm, area);
  return {
    pattern: "staggered",
    rowsRun,
    rows,
    perOddRow,
    perEvenRow,
    cavities,
    usedLengthMm: rowsRun === "across" ? inStack : inRow,
    usedWidthMm: rowsRun === "across" ? inRow : inStack,
  };
}

function free(sizeMm: number, { edgeMm }: RimArea): number {
  return sizeMm - 2 * edgeMm;
}

/** Rims in a room: the first takes its diameter, each further one a pitch. */
function countIn(roomMm: number, pitchMm: number, rimDiameterMm: number): number {
  return roomMm < rimDiameterMm ? 0 : Math.floor((roomMm - rimDiameterMm) / pitchMm + 1e-9) + 1;
}

function usedMm(count: number, pitchMm: number, { rimDiameterMm, edgeMm }: RimArea): number {
  return (count - 1) * pitchMm + rimDiameterMm + 2 * edgeMm;
}

/** Share of the sheet that the rims cover, 0…1: cavities × π/4·D² over width × advance. */
export function areaUtilisation(cut: {
  readonly cavities: number;
  readonly rimDiameterMm: number;
  readonly sheetWidthMm: number;
  readonly indexLengthMm: number;
}): number {
  return (
    (cut.cavities * (Math.PI / 4) * cut.rimDiameterMm * cut.rimDiameterMm) /
    (cut.sheetWidthMm * cut.indexLengthMm)
  );
}
