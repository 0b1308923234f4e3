/** How the catalogues write what the server reports by id and in seconds. */
export interface Naming {
  readonly line: (id: string) => string;
  readonly mould: (id: string) => string;
  readonly sheet: (id: string) => string;
  readonly team: (id: string) => string;
  /** Of an ISO 8601 instant, on the plant's clock. */
  readonly moment: (instant: string) => string;
  readonly span: (seconds: number) => string;
  /** Up to three decimals. */
  readonly figure: (value: number) => string;
}
