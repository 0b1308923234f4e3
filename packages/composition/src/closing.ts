/** Things to close, the last opened first. */
export interface Closing {
  readonly add: (close: () => Promise<void>) => void;
  /** Closes everything once; one that fails does not keep the others open, and the first failure is thrown at the end. */
  readonly closeAll: () => Promise<void>;
}

export function closingInReverse(): Closing {
  const opened: (() => Promise<void>)[] = [];
  return {
    add: (close) => void opened.push(close),
    closeAll: async () => {
      const failures: unknown[] = [];
      for (let close = opened.pop(); close !== undefined; close = opened.pop()) {
        await close().catch((error: unknown) => failures.push(error));
      }
      if (failures.length > 0) throw failures[0];
    },
  };
}
