/** A choice of the reader that this browser keeps. */
export interface KeptChoice<Choice> {
  readonly read: () => Choice;
  readonly choose: (choice: Choice) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

/** A choice kept under a key. What is found there is read by `parse`, which also says what holds before anything was chosen. */
export function keptChoice<Choice extends string | null>(
  storeKey: string,
  parse: (kept: string | null) => Choice,
): KeptChoice<Choice> {
  const listeners = new Set<() => void>();
  return {
    read: () => parse(localStorage.getItem(storeKey)),
    choose: (choice) => {
      if (choice === null || choice === parse(null)) localStorage.removeItem(storeKey);
      else localStorage.setItem(storeKey, choice);
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
