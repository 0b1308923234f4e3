import type { FieldFault } from "@formweek/contracts";
import type { Naming } from "../naming.ts";
import { fault, placeOf } from "./fault-words.ts";

/** A fault in German where it came apart from words, and the name of its record. */
export function worded(said: FieldFault, naming: Naming): FieldFault {
  const path = placeOf(said);
  if (said.cause === undefined) return { ...said, path };
  const [problem, remedy] = fault(said.cause, naming);
  return { ...said, path, problem, remedy };
}

/** So many faults are said in a sentence; all are listed beside it. */
const mostSaid = 3;

/** What is wrong, each once; the first few only, since all are listed beside it. */
export function causeOf(faults: readonly FieldFault[]): string {
  const said = [
    ...new Set(
      faults.map(({ record, path, problem }) => (record === undefined ? problem : `${path}: ${problem}`)),
    ),
  ];
  const more = said.length > mostSaid ? ` Und ${said.length - mostSaid} weitere.` : "";
  return `${said.slice(0, mostSaid).join(" ")}${more}`;
}

/** What to do about them, each once. */
export function remedyOf(faults: readonly FieldFault[]): string {
  return [...new Set(faults.map(({ remedy }) => remedy))].slice(0, mostSaid).join(" ");
}
