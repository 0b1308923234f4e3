/**
 * One step of the database's structure. Steps only go forward and, once released, never change: a correction is a new
 * step. Nothing newer than PostgreSQL 15 may be used.
 */
export interface Migration {
  /** Counts up by one from 1. */
  readonly version: number;
  readonly name: string;
  /** Run one by one, all in the transaction that records the version. */
  readonly statements: readonly string[];
}
