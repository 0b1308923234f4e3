/** Values beside a log line; never a secret, never a customer's file. */
export type LogDetails = Readonly<Record<string, string | number | boolean | null>>;

/** The operator's log. */
export interface Log {
  readonly info: (message: string, details?: LogDetails) => void;
  readonly warn: (message: string, details?: LogDetails) => void;
  /** `error` is the exception, if there was one; its stack is written. */
  readonly error: (message: string, details?: LogDetails, error?: unknown) => void;
}
