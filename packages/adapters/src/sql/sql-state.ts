/** SQLSTATE of a failed statement, looked for along the chain of causes; null when the failure has none. */
function sqlStateOf(error: unknown): string | null {
  for (let link: unknown = error; link instanceof Error; link = link.cause) {
    const code = (link as { readonly code?: unknown }).code;
    if (typeof code === "string" && /^[0-9A-Z]{5}$/.test(code)) return code;
  }
  return null;
}

/** serialization_failure and deadlock_detected, PostgreSQL manual, appendix A. */
const retryable: readonly (string | null)[] = ["40001", "40P01"];

/** True when the same transaction may succeed if it is run again. */
export const isSerialisationFailure = (error: unknown): boolean => retryable.includes(sqlStateOf(error));
