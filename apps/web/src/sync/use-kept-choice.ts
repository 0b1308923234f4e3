import { useSyncExternalStore } from "react";
import type { KeptChoice } from "./kept-choice.ts";

/** The choice as it stands, for as long as it is shown. */
export function useKeptChoice<Choice>({ read, subscribe }: KeptChoice<Choice>): Choice {
  return useSyncExternalStore(subscribe, read);
}
