import { createContext, useContext } from "react";
import type { Naming } from "../text/naming.ts";

const asIs = (id: string): string => id;

const NamingContext = createContext<Naming>({
  line: asIs,
  mould: asIs,
  sheet: asIs,
  team: asIs,
  moment: asIs,
  span: String,
  figure: String,
});
export const NamingProvider = NamingContext.Provider;

/** Names of the records of the plant that is open, and figures in the reader's locale. */
export function useNaming(): Naming {
  return useContext(NamingContext);
}
