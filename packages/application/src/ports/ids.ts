/** Source of new identities. */
export interface Ids {
  /** A new id: unique for ever, not guessable, safe in a URL, at most 64 characters; later ids sort after earlier ones. */
  readonly next: () => string;
}
