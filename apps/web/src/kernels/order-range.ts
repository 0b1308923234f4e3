/** Ids of the rows between two, both included; the second alone where the first is not among the rows. */
export function rangeOf(
  rows: readonly { readonly id: string }[],
  fromId: string | null,
  toId: string,
): readonly string[] {
  const from = rows.findIndex(({ id }) => id === fromId);
  const to = rows.findIndex(({ id }) => id === toId);
  if (from < 0 || to < 0) return [toId];
  return rows.slice(Math.min(from, to), Math.max(from, to) + 1).map(({ id }) => id);
}
