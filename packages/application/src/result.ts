import type { AppError } from "./errors.ts";

/** What a use case answers: the value, or the refusal that people can act on. A thrown exception is a bug or a broken driver. */
export type Result<T, E = AppError> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

/** Wraps a success. */
export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

/** Wraps a refusal. */
export const refused = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error });
