/** Messages between the database's thread and its client; one reply to each request, in any order. */
export type ThreadRequest =
  | {
      readonly id: number;
      readonly kind: "query";
      readonly text: string;
      readonly values: readonly unknown[];
      readonly rowMode: RowMode;
    }
  | { readonly id: number; readonly kind: "close" };

export type RowMode = "array" | "object";

export type ThreadReply =
  | { readonly id: number; readonly kind: "result"; readonly result: QueryResult }
  | { readonly id: number; readonly kind: "failure"; readonly failure: SqlFailure };

export interface QueryResult {
  readonly rows: readonly unknown[];
  readonly affectedRows?: number | undefined;
  readonly fields: readonly { readonly name: string; readonly dataTypeID: number }[];
}

/** The parts of a database error that survive the way between threads. */
export interface SqlFailure {
  readonly message: string;
  readonly code: string | undefined;
  readonly detail: string | undefined;
  readonly constraint: string | undefined;
}

/** The first message of the thread: the database is open, or why not. */
export type ThreadGreeting =
  { readonly kind: "open" } | { readonly kind: "refused"; readonly message: string };

export interface ThreadData {
  readonly folder: string;
}
