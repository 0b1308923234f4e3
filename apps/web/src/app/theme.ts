import { useEffect, useSyncExternalStore } from "react";

export type ThemeChoice = "system" | "light" | "dark";

const storeKey = "formweek.theme";
const listeners = new Set<() => void>();
const prefersDark = window.matchMedia("(prefers-color-scheme: dark)");

function readChoice(): ThemeChoice {
  const kept = localStorage.getItem(storeKey);
  return kept === "light" || kept === "dark" ? kept : "system";
}

export function chooseTheme(choice: ThemeChoice): void {
  if (choice === "system") localStorage.removeItem(storeKey);
  else localStorage.setItem(storeKey, choice);
  for (const listener of listeners) listener();
}

/** Puts the chosen colours on the page; called before the first paint and whenever the choice or the system changes. */
export function applyTheme(): void {
  const choice = readChoice();
  const isDark = choice === "dark" || (choice === "system" && prefersDark.matches);
  document.documentElement.dataset["theme"] = isDark ? "dark" : "light";
}

export function useTheme(): ThemeChoice {
  const choice = useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, readChoice);
  useEffect(() => {
    applyTheme();
    prefersDark.addEventListener("change", applyTheme);
    return () => prefersDark.removeEventListener("change", applyTheme);
  }, [choice]);
  return choice;
}
