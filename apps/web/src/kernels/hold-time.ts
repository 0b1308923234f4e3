import { wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** When offices close; common practice, no source. */
const closingMinute = 17 * 60;
const saturday = 6;

/** How long a hold lasts unless something else is said: to the end of the next working day after today, Monday to Friday. */
export function usualHoldEnd(clock: ZoneClock, now: number): number {
  const { year, month, day } = clock.wallTimeAt(now);
  for (let step = 1; ; step += 1) {
    const at = clock.instantOf(year, month, day + step, closingMinute);
    if (clock.wallTimeAt(at).weekday < saturday) return at;
  }
}

/** Latest end of a hold that the server takes, as a field of day and time has it. */
export function latestHoldText(clock: ZoneClock, now: number): string {
  return wallText(clock, now + 30 * 86_400);
}
