/** Steps of working plans that this page took, so that it can tell them from everybody else's. */
const own = new Map<string, Set<number>>();

export function rememberOwnStep(plantId: string, revision: number): void {
  const known = own.get(plantId) ?? new Set<number>();
  known.add(revision);
  own.set(plantId, known);
}

export function isOwnStep(plantId: string, revision: number): boolean {
  return own.get(plantId)?.has(revision) ?? false;
}
