/** Exit codes: done, the answer is no (bad rows, an invalid plan), the command cannot be carried out as asked. */
export type ExitCode = 0 | 1 | 2;

/** A command asked for in a way that cannot be carried out; ends with exit code 2. */
export class UsageError extends Error {
  readonly remedy: string;

  constructor(problem: string, remedy: string) {
    super(problem);
    this.name = "UsageError";
    this.remedy = remedy;
  }
}

/** Where a command writes: results to the first, progress and faults to the second. */
export interface Output {
  readonly say: (line: string) => void;
  readonly warn: (line: string) => void;
  /** Rewrites one line of progress; does nothing where nobody watches. */
  readonly progress: (line: string) => void;
}
