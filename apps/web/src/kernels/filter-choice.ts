/** What can be filtered by: id and name. */
export type FilterChoice = readonly [id: string, name: string];

/** Choices once each and by name; those without an id are none. */
export function byName(choices: readonly FilterChoice[]): readonly FilterChoice[] {
  const named = new Map(choices.filter(([id]) => id !== ""));
  return [...named].sort(([a, first], [b, second]) => first.localeCompare(second) || (a < b ? -1 : 1));
}
