import { de } from "./de/de.ts";
import { en, type Text } from "./en/en.ts";

export const readableLanguages = ["en", "de"] as const;
export type Language = (typeof readableLanguages)[number];

interface LanguageEntry {
  /** In the language itself, so that its readers find it. */
  readonly name: string;
  readonly text: Text;
  /** BCP 47 tag for numbers and dates where the browser wishes no region of this language. */
  readonly locale: string;
}

/** Every language of the app. */
export const languages: Readonly<Record<Language, LanguageEntry>> = {
  en: { name: "English", text: en, locale: "en-GB" },
  de: { name: "Deutsch", text: de, locale: "de-DE" },
};

export interface ReaderLanguage {
  readonly language: Language;
  readonly text: Text;
  /** BCP 47 tag of numbers, dates and the order of names. */
  readonly locale: string;
}

/**
 * The language the reader chose before, else the first of the browser's wishes that there is, else English;
 * with the region that the browser wishes for it, if any. `chosen` and `wished` are BCP 47 tags or anything.
 */
export function readerLanguage(chosen: string | null, wished: readonly string[]): ReaderLanguage {
  const language =
    readableLanguages.find((known) => known === chosen) ?? firstKnown(wished.map(languageOf)) ?? "en";
  const { text, locale } = languages[language];
  const wishedLocale = wished.find((tag) => languageOf(tag) === language && isLocale(tag));
  return { language, text, locale: wishedLocale ?? locale };
}

function firstKnown(subtags: readonly string[]): Language | undefined {
  for (const subtag of subtags) {
    const language = readableLanguages.find((known) => known === subtag);
    if (language !== undefined) return language;
  }
  return undefined;
}

function languageOf(tag: string): string {
  return tag.split("-", 1)[0]?.toLowerCase() ?? "";
}

/** Browsers also hand out names of the system's that are no tags, such as "en-US@posix". */
function isLocale(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}
