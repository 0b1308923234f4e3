import { createContext, useContext } from "react";
import { en } from "../text/en/en.ts";
import { formatFor, type Format } from "./format.ts";

const FormatContext = createContext<Format>(
  formatFor({ locale: undefined, timeZone: "UTC", currency: "EUR", text: en }),
);
export const FormatProvider = FormatContext.Provider;

/** Numbers in the reader's locale, times in the zone of the plant that is open. */
export function useFormat(): Format {
  return useContext(FormatContext);
}
