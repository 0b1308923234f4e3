import { keptChoice } from "../sync/kept-choice.ts";

export type ThemeChoice = "system" | "light" | "dark";

export const themeChoice = keptChoice<ThemeChoice>("formweek.theme", (kept) =>
  kept === "light" || kept === "dark" ? kept : "system",
);

const prefersDark = window.matchMedia("(prefers-color-scheme: dark)");

function applyTheme(): void {
  const choice = themeChoice.read();
  const isDark = choice === "dark" || (choice === "system" && prefersDark.matches);
  document.documentElement.dataset["theme"] = isDark ? "dark" : "light";
}

/** Puts the chosen colours on the page, now and whenever the choice or the system changes. */
export function keepTheme(): void {
  applyTheme();
  themeChoice.subscribe(applyTheme);
  prefersDark.addEventListener("change", applyTheme);
}
