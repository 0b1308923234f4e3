import { describe, expect, it } from "vitest";
import { languages, readableLanguages, readerLanguage } from "./languages.ts";

/** Every word of a catalogue by its path: texts as they are, functions by their number of arguments. */
function wordsOf(value: unknown, path = ""): readonly (readonly [string, unknown])[] {
  if (typeof value === "function") return [[path, value.length]];
  if (typeof value !== "object" || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, inner]) => wordsOf(inner, `${path}/${key}`));
}

describe.each(readableLanguages)("the words in %s", (language) => {
  const english = wordsOf(languages.en.text);
  const words = wordsOf(languages[language].text);

  it("have the keys of the English ones, in their order", () => {
    expect(words.map(([path]) => path)).toEqual(english.map(([path]) => path));
  });

  it("take the same arguments", () => {
    const functions = (entries: typeof words): typeof words =>
      entries.filter(([, word]) => typeof word === "number");
    expect(functions(words)).toEqual(functions(english));
  });

  it("are never empty, and have no space at an end", () => {
    const untidy = words.filter(
      ([, word]) => typeof word === "string" && (word === "" || word.trim() !== word),
    );
    expect(untidy).toEqual([]);
  });
});

describe("readerLanguage", () => {
  it.each([
    [["de-AT", "en"], "de", "de-AT"],
    [["fr-FR", "de", "en-US"], "de", "de"],
    [["en-US", "de"], "en", "en-US"],
    [["xx-YY", "EN-gb"], "en", "EN-gb"],
    [["fr-FR"], "en", "en-GB"],
    [["en-US@posix"], "en", "en-GB"],
    [[], "en", "en-GB"],
  ])("takes of %j the language %s with the locale %s", (wished, language, locale) => {
    expect(readerLanguage(null, wished)).toMatchObject({ language, locale });
  });

  it("prefers what the reader chose, in the browser's region for it", () => {
    expect(readerLanguage("de", ["en-US"])).toMatchObject({ language: "de", locale: "de-DE" });
    expect(readerLanguage("de", ["en-US", "de-CH"])).toMatchObject({ language: "de", locale: "de-CH" });
  });

  it("does not mind a choice that it does not know", () => {
    expect(readerLanguage("tlh", ["de"])).toMatchObject({ language: "de" });
  });
});
