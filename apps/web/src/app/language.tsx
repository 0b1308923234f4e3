import { useEffect, useMemo, useSyncExternalStore, type JSX, type ReactNode } from "react";
import { readerLanguage } from "../text/languages.ts";
import { LanguageProvider } from "../text/text.ts";

const storeKey = "formweek.language";
const listeners = new Set<() => void>();

function readChoice(): string | null {
  return localStorage.getItem(storeKey);
}

/** Keeps the language in this browser and puts it on the page at once. */
export function chooseLanguage(language: string): void {
  localStorage.setItem(storeKey, language);
  for (const listener of listeners) listener();
}

/** Gives all within it the language kept in this browser, else the browser's, and names it to screen readers. */
export function KeptLanguage({ children }: { readonly children: ReactNode }): JSX.Element {
  const choice = useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, readChoice);
  const reader = useMemo(() => readerLanguage(choice, navigator.languages), [choice]);
  useEffect(() => {
    document.documentElement.lang = reader.locale;
  }, [reader.locale]);
  return <LanguageProvider value={reader}>{children}</LanguageProvider>;
}
