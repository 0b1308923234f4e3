/** The order in which readers of a locale look for names: numbers in them by value, so that A-9 stands before A-10. */
export interface NameOrder {
  readonly compare: (one: string, other: string) => number;
}

/** Names that differ only in what the locale passes over, such as leading zeros, go by their code units. */
export function namesIn(locale: string): NameOrder {
  const collator = new Intl.Collator(locale, { numeric: true });
  return {
    compare: (one, other) => collator.compare(one, other) || (one < other ? -1 : one > other ? 1 : 0),
  };
}
