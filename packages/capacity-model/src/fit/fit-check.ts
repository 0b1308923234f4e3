/** One reason why a mould may or may not run on a line. */
export type FitCheckCode =
  | "mould-length"
  | "mould-width"
  | "depth"
  | "sheet-thickness-least"
  | "sheet-thickness-most"
  | "sheet-width-least"
  | "sheet-width-most"
  | "sheet-covers-mould"
  | "index-in-oven"
  | "trim-force"
  | "forming-air-force"
  | "forming-air-pressure"
  | "mould-mass"
  | "polymer-on-line"
  | "stacker-tooling"
  | "rim-rolling-unit"
  | "rim-tooling"
  | "approval"
  | "product-mould"
  | "product-insert"
  | "product-sheet"
  | "sheet-polymer";

/** Unit of a check's numbers. */
export type FitUnit = "mm" | "kN" | "bar" | "kg";

/** A check on numbers: `needed` against `has` in `unit`; `rule` says on which side of `has` the need must lie. */
export interface NumberCheck {
  readonly kind: "number";
  readonly code: FitCheckCode;
  readonly passed: boolean;
  readonly needed: number;
  readonly has: number;
  readonly unit: FitUnit;
  readonly rule: "needed at most has" | "needed at least has";
  readonly sentence: string;
}

/** A check on names: `needed` must be among what `has` lists. */
export interface NameCheck {
  readonly kind: "name";
  readonly code: FitCheckCode;
  readonly passed: boolean;
  readonly needed: string;
  readonly has: readonly string[];
  readonly sentence: string;
}

export type FitCheck = NumberCheck | NameCheck;

/** Length, force, pressure or mass that a line must offer; equal is enough (1e-9 of it is given to rounding). */
export function atMost(check: {
  readonly code: FitCheckCode;
  readonly needed: number;
  readonly has: number;
  readonly unit: FitUnit;
  readonly what: string;
}): NumberCheck {
  const { code, needed, has, unit, what } = check;
  const passed = needed <= has * (1 + 1e-9);
  return {
    kind: "number",
    code,
    passed,
    needed,
    has,
    unit,
    rule: "needed at most has",
    sentence: `${what}: ${shown(needed)} ${unit}, the limit is ${shown(has)} ${unit}${passed ? "" : `; ${shown(needed - has)} ${unit} too much`}.`,
  };
}

/** A value that must not be below a line's least. */
export function atLeast(check: {
  readonly code: FitCheckCode;
  readonly needed: number;
  readonly has: number;
  readonly unit: FitUnit;
  readonly what: string;
}): NumberCheck {
  const { code, needed, has, unit, what } = check;
  const passed = needed >= has * (1 - 1e-9);
  return {
    kind: "number",
    code,
    passed,
    needed,
    has,
    unit,
    rule: "needed at least has",
    sentence: `${what}: ${shown(needed)} ${unit}, the least is ${shown(has)} ${unit}${passed ? "" : `; ${shown(has - needed)} ${unit} too little`}.`,
  };
}

/** A name that must be among those offered. */
export function oneOf(check: {
  readonly code: FitCheckCode;
  readonly needed: string;
  readonly has: readonly string[];
  readonly yes: string;
  readonly no: string;
}): NameCheck {
  const { code, needed, has, yes, no } = check;
  const passed = has.includes(needed);
  return { kind: "name", code, passed, needed, has, sentence: passed ? yes : no };
}

/** Three figures behind the point for small numbers, one for large ones, no idle zeros; what fails never shows as equal. */
function shown(value: number): string {
  const digits = Math.abs(value) >= 100 ? 1 : Math.abs(value) >= 0.001 ? 3 : 6;
  return String(Number(value.toFixed(digits)));
}
