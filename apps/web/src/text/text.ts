import { createContext, useContext } from "react";
import { en } from "./en/en.ts";

/** The shape that every language fills. */
export type Text = typeof en;

/** Languages by their tag; the first is taken when the reader's is not among them. */
const languages: Readonly<Record<string, Text>> = { en };

/** The reader's language among those that there are, by the browser's order of wish. */
export function chosenText(wished: readonly string[]): Text {
  for (const tag of wished) {
    const text = languages[tag] ?? languages[tag.split("-")[0] ?? ""];
    if (text !== undefined) return text;
  }
  return en;
}

const TextContext = createContext<Text>(en);
export const TextProvider = TextContext.Provider;

/** The words of the app in the reader's language. */
export function useText(): Text {
  return useContext(TextContext);
}
