import { keptChoice } from "./kept-choice.ts";

/** As many characters as the server takes. */
export const longestName = 40;

/** The name by which others see this browser's changes; empty: none. It is told, not proven. */
export const plannerName = keptChoice<string>("formweek.name", (kept) => cleanName(kept ?? ""));

/** The name without what steers, hides or turns the text beside it. */
export function cleanName(typed: string): string {
  const plain = [...typed.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, "").trim()];
  return plain.slice(0, longestName).join("").trim();
}

/** What a call says of who asks. */
export function nameHeader(): Readonly<Record<string, string>> {
  const name = plannerName.read();
  return name === "" ? {} : { "x-planner-name": encodeURIComponent(name) };
}
