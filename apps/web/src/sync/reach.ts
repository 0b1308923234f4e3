const patienceMs = 5_000;

/** Whether the server answers at all. */
export async function serverAnswers(): Promise<boolean> {
  try {
    const { ok } = await fetch("/api/health/live", {
      cache: "no-store",
      signal: AbortSignal.timeout(patienceMs),
    });
    return ok;
  } catch {
    return false;
  }
}
