/** Seconds since the epoch as ISO 8601 UTC without fractions, "2026-11-30T05:00:00Z". */
export function isoInstant(seconds: number): string {
  return new Date(seconds * 1000).toISOString().replace(".000Z", "Z");
}

/** The reverse; null when the text is not an ISO 8601 instant with a zone and whole seconds. */
export function instantOfIso(text: string): number | null {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.0+)?)?(Z|[+-]\d{2}:\d{2})$/.test(text)) return null;
  const milliseconds = Date.parse(text);
  return Number.isFinite(milliseconds) ? Math.floor(milliseconds / 1000) : null;
}
