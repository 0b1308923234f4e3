/** Colours of one theme as the canvas needs them, read from the style sheet's tokens. */
export interface Palette {
  readonly paper: string;
  readonly leaf: string;
  readonly ink: string;
  readonly soft: string;
  readonly rule: string;
  readonly faint: string;
  readonly shut: string;
  readonly shutLine: string;
  readonly act: string;
  readonly actWeak: string;
  readonly late: string;
  readonly lateWeak: string;
  readonly gate: string;
  readonly gateInk: string;
  readonly outline: string;
  readonly clear: string;
  readonly isDark: boolean;
}

/** The colours of a theme, whichever the page wears. */
export function paletteOf(theme: "light" | "dark"): Palette {
  const element = document.createElement("div");
  element.dataset["theme"] = theme;
  document.body.append(element);
  const palette = readPalette(element);
  element.remove();
  return palette;
}

/** Reads the tokens that hold on `element` now. */
export function readPalette(element: Element): Palette {
  const style = getComputedStyle(element);
  const token = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: token("paper"),
    leaf: token("leaf"),
    ink: token("ink"),
    soft: token("soft"),
    rule: token("rule"),
    faint: token("faint"),
    shut: token("shut"),
    shutLine: token("shut-line"),
    act: token("act"),
    actWeak: token("act-weak"),
    late: token("late"),
    lateWeak: token("late-weak"),
    gate: token("gate"),
    gateInk: token("gate-ink"),
    outline: token("outline"),
    clear: token("clear"),
    isDark: token("scheme") === "dark",
  };
}
