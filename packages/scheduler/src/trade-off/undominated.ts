/** True when a is as good as b in every value and better in one. Values: the less the better, as many in both. */
export function dominates(a: readonly number[], b: readonly number[]): boolean {
  return a.every((value, i) => value <= b[i]!) && a.some((value, i) => value < b[i]!);
}

/** The items that no other beats; of equal ones the first. Keeps their order. O(n²) */
export function undominated<T>(items: readonly T[], valuesOf: (item: T) => readonly number[]): readonly T[] {
  const values = items.map(valuesOf);
  return items.filter((_, i) => {
    const own = values[i]!;
    return !values.some(
      (other, j) => dominates(other, own) || (j < i && other.every((value, k) => value === own[k])),
    );
  });
}
