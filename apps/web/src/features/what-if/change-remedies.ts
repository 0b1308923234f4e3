import type { ChangeKind } from "../../kernels/scenario-draft.ts";
import type { Text } from "../../text/text.ts";

/** What to write in fields of a change that say nothing, by field. */
export function localRemedies(
  kind: ChangeKind,
  fields: readonly string[],
  { book, whatIf }: Text,
): ReadonlyMap<string, string> {
  const { remedies: own } = whatIf.editor;
  const remedies: Readonly<Record<string, string>> =
    kind === "rush order"
      ? { ...book.remedies, ...book.newRemedies }
      : kind === "another team"
        ? { ...own, name: own.teamName }
        : own;
  return new Map(
    fields.flatMap((field) => (remedies[field] === undefined ? [] : [[field, remedies[field]]])),
  );
}

/** Fields of a change that stand in its form: what is wrong elsewhere is said of the whole change. */
export const fieldsOfChange = {
  "add shift": [
    "date",
    "start",
    "end",
    "name",
    "breaks",
    "shift",
    "lineIds",
    "teamIds",
    "operators",
    "poolId",
    "heads",
  ],
  "close line": ["lineId", "from", "to", "reason"],
  "more copies": ["mouldId", "more"],
  "another team": ["likeTeamId", "name", "from", "to"],
  "cycle rate": ["lineId", "mouldId", "cyclesPerMin"],
  "change order": ["orderId", "pieces", "dueAt"],
  "rush order": ["id", "productId", "pieces", "dueAt", "dueTime", "customer"],
  "cancel order": ["orderId"],
} as const satisfies Record<ChangeKind, readonly string[]>;
