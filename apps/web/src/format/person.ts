import type { Text } from "../text/text.ts";

/** What stands before the name that a planner of the server's machine has chosen. */
const chosenName = "local:";

/** Who did something, in the reader's words where the id is not a name. */
export function personName(by: string, { versions }: Pick<Text, "versions">): string {
  return by.startsWith(chosenName) ? by.slice(chosenName.length) : (versions.who[by] ?? by);
}
