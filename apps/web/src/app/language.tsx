import { useEffect, useMemo, type JSX, type ReactNode } from "react";
import { keptChoice } from "../sync/kept-choice.ts";
import { useKeptChoice } from "../sync/use-kept-choice.ts";
import { readerLanguage } from "../text/languages.ts";
import { LanguageProvider } from "../text/text.ts";

/** The language that the reader has chosen; null: the browser's. */
export const languageChoice = keptChoice<string | null>("formweek.language", (kept) => kept);

/** Gives all within it the language kept in this browser, else the browser's, and names it to screen readers. */
export function KeptLanguage({ children }: { readonly children: ReactNode }): JSX.Element {
  const choice = useKeptChoice(languageChoice);
  const reader = useMemo(() => readerLanguage(choice, navigator.languages), [choice]);
  useEffect(() => {
    document.documentElement.lang = reader.locale;
  }, [reader.locale]);
  return <LanguageProvider value={reader}>{children}</LanguageProvider>;
}
