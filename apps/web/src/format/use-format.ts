import { createContext, useContext } from "react";
import { languages } from "../text/languages.ts";
import { formatFor, type Format } from "./format.ts";

const FormatContext = createContext<Format>(formatFor({ ...languages.en, timeZone: "UTC", currency: "EUR" }));
export const FormatProvider = FormatContext.Provider;

/** Numbers in the reader's locale, times in the zone of the plant that is open. */
export function useFormat(): Format {
  return useContext(FormatContext);
}
