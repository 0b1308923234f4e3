const CANDIDATES = [",", ";", "\t", "|"] as const;
export type Delimiter = (typeof CANDIDATES)[number];

/** Lines that are looked at. */
const SAMPLE_LINES = 30;

/**
 * The delimiter that parts most lines into the same number of fields. Quoted text does not count. A file of one column
 * has none and is read with commas.
 */
export function findDelimiter(text: string): Delimiter {
  const lines = unquotedLines(text);
  let best: { readonly delimiter: Delimiter; readonly agreeing: number; readonly fields: number } = {
    delimiter: ",",
    agreeing: 0,
    fields: 0,
  };
  for (const delimiter of CANDIDATES) {
    const counts = lines.map((line) => line.split(delimiter).length - 1).filter((count) => count > 0);
    const usual = mostFrequent(counts);
    const agreeing = counts.filter((count) => count === usual).length;
    if (agreeing > best.agreeing || (agreeing === best.agreeing && usual > best.fields))
      best = { delimiter, agreeing, fields: usual };
  }
  return best.delimiter;
}

/** The first lines with quoted parts blanked out. */
function unquotedLines(text: string): readonly string[] {
  const sample = text.slice(0, 200_000).replace(/"(?:[^"]|"")*"/g, "");
  return sample
    .split(/\r\n|\n|\r/)
    .filter((line) => line.trim() !== "")
    .slice(0, SAMPLE_LINES);
}

function mostFrequent(counts: readonly number[]): number {
  const times = new Map<number, number>();
  for (const count of counts) times.set(count, (times.get(count) ?? 0) + 1);
  return (
    [...times].reduce(
      (best, [count, seen]) =>
        seen > best[1] || (seen === best[1] && count > best[0]) ? [count, seen] : best,
      [0, 0],
    )[0] ?? 0
  );
}
