import { createContext, useContext } from "react";
import { readerLanguage, type ReaderLanguage } from "./languages.ts";

export type { Text } from "./en/en.ts";

const LanguageContext = createContext<ReaderLanguage>(readerLanguage(null, []));
export const LanguageProvider = LanguageContext.Provider;

/** The reader's language, with its words and the locale of numbers and dates. */
export function useLanguage(): ReaderLanguage {
  return useContext(LanguageContext);
}

/** The words of the app in the reader's language. */
export function useText(): ReaderLanguage["text"] {
  return useLanguage().text;
}
