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
    // worded only where it is read: planning makes a check of every mould on every line and reads those that fail
    get sentence() {
      const { need, limit, gap } = shownTogether(needed, has);
      return `${what}: ${need} ${unit}, the limit is ${limit} ${unit}${passed ? "" : `; ${gap} ${unit} too much`}.`;
    },
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
    get sentence() {
      const { need, limit, gap } = shownTogether(needed, has);
      return `${what}: ${need} ${unit}, the least is ${limit} ${unit}${passed ? "" : `; ${gap} ${unit} too little`}.`;
    },
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

/** The need, the limit and the gap between them in one precision, fine enough that what fails never reads as equal. */
function shownTogether(
  needed: number,
  has: number,
): { readonly need: string; readonly limit: string; readonly gap: string } {
  const usual = Math.max(Math.abs(needed), Math.abs(has)) >= 100 ? 1 : 3;
  const digits = Number(Math.abs(needed - has).toFixed(usual)) === 0 ? 9 : usual;
  const shown = (value: number) => String(Number(value.toFixed(digits)));
  return { need: shown(needed), limit: shown(has), gap: shown(Math.abs(needed - has)) };
}
