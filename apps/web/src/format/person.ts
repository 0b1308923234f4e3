import type { Text } from "../text/text.ts";

/** Who did something, in the reader's words where the id is not a name. */
export function personName(by: string, { versions }: Pick<Text, "versions">): string {
  return versions.who[by] ?? by;
}
