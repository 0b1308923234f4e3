import type { FaultCause } from "@formweek/contracts";

type Bounded = Extract<FaultCause, { readonly kind: "value too small" | "value too large" }>;

/** Kinds of values by the names that the schemas' library gives them; another stands as it came. */
const kinds = new Map([
  ["string", "ein Text"],
  ["number", "eine Zahl"],
  ["int", "eine ganze Zahl"],
  ["boolean", "ja oder nein"],
  ["array", "eine Liste"],
  ["object", "ein Datensatz"],
  ["record", "ein Datensatz"],
]);

/** "eine ganze Zahl". */
export const kindOfValue = (expected: string): string => kinds.get(expected) ?? expected;

/** "mindestens 1 Zeichen", "weniger als 100". */
export function boundOf(cause: Bounded, figure: (value: number) => string): string {
  const { of, including } = cause;
  const amount = `${figure(cause.kind === "value too small" ? cause.least : cause.most)}${units[of]}`;
  if (cause.kind === "value too small") return `${including ? "mindestens" : "mehr als"} ${amount}`;
  return `${including ? "höchstens" : "weniger als"} ${amount}`;
}

const units: Readonly<Record<Bounded["of"], string>> = {
  number: "",
  letters: " Zeichen",
  entries: " Einträge",
};
