import type { Text } from "../text/text.ts";

/** Numbers in the reader's locale and times in the plant's zone. Instants are seconds since the epoch. */
export interface Format {
  readonly count: (value: number) => string;
  readonly decimal: (value: number, digits: number) => string;
  /** As many decimals as it has, up to three. */
  readonly figure: (value: number) => string;
  readonly percent: (share: number) => string;
  /** Percent with one decimal place at most. */
  readonly percentFine: (share: number) => string;
  readonly money: (value: number) => string;
  /** Money with cents where it has any. */
  readonly moneyFine: (value: number) => string;
  /** "Thu", of an instant in UTC. */
  readonly weekday: (instant: number) => string;
  /** "Thu 3 Dec 14:00"; in an hour that a clock change repeats with the name of the time, "Sun 25 Oct 02:30 CEST". */
  readonly instant: (instant: number) => string;
  /** "Thu 3 Dec 2026 14:00" */
  readonly dated: (instant: number) => string;
  /** "14:00", the same way. */
  readonly clock: (instant: number) => string;
  /** "Thu 3 Dec" */
  readonly day: (instant: number) => string;
  /** "Thursday 3 December" */
  readonly longDay: (instant: number) => string;
  /** "3 Dec" */
  readonly shortDay: (instant: number) => string;
  /** "40 min", "1 h 20", "2 d 3 h", "less than a minute": rounded to the last unit shown; negative spans as their size. */
  readonly span: (seconds: number) => string;
  /** "156 h": whole hours, minutes under one hour; what sums over many orders are told in. */
  readonly hours: (seconds: number) => string;
  /** As `span`, but bare minutes under an hour: what stands on a gate. */
  readonly gate: (seconds: number) => string;
}

export interface FormatSetting {
  /** BCP 47 tag. */
  readonly locale: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly text: Text;
}

export function formatFor({ locale, timeZone, currency, text }: FormatSetting): Format {
  const count = lazily(() => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }));
  const figure = lazily(() => new Intl.NumberFormat(locale, { maximumFractionDigits: 3 }));
  const percent = lazily(() => new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 0 }));
  const money = lazily(
    () => new Intl.NumberFormat(locale, { style: "currency", currency, maximumFractionDigits: 0 }),
  );
  const percentFine = lazily(
    () => new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 1 }),
  );
  const moneyFine = lazily(
    () =>
      new Intl.NumberFormat(locale, { style: "currency", currency, trailingZeroDisplay: "stripIfInteger" }),
  );
  const weekday = lazily(() => new Intl.DateTimeFormat(locale, { weekday: "short", timeZone: "UTC" }));
  const decimals = [0, 1, 2, 3].map((digits) =>
    lazily(
      () => new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits }),
    ),
  );
  const zoned = (options: Intl.DateTimeFormatOptions): ((instant: number) => string) => {
    const format = lazily(() => new Intl.DateTimeFormat(locale, { ...options, timeZone }));
    return (instant) =>
      format()
        .format(instant * 1000)
        .replace(/,/g, "");
  };
  const zoneName = zoneNameWhereNeeded(locale, timeZone);
  const withClock = (options: Intl.DateTimeFormatOptions): ((instant: number) => string) => {
    const format = zoned(options);
    return (instant) => `${format(instant)}${zoneName(instant)}`;
  };
  const clock = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" } as const;
  const span = (seconds: number): string => spanText(Math.abs(seconds), text);
  return {
    count: (value) => count().format(value),
    decimal: (value, digits) => (decimals[digits] ?? count)().format(value),
    figure: (value) => figure().format(value),
    percent: (share) => percent().format(share),
    percentFine: (share) => percentFine().format(share),
    money: (value) => money().format(value),
    moneyFine: (value) => moneyFine().format(value),
    weekday: (instant) => weekday().format(instant * 1000),
    instant: withClock({ weekday: "short", day: "numeric", month: "short", ...clock }),
    dated: withClock({ weekday: "short", day: "numeric", month: "short", year: "numeric", ...clock }),
    clock: withClock(clock),
    day: zoned({ weekday: "short", day: "numeric", month: "short" }),
    longDay: zoned({ weekday: "long", day: "numeric", month: "long" }),
    shortDay: zoned({ day: "numeric", month: "short" }),
    span,
    hours: (seconds) =>
      seconds < 3600 ? span(seconds) : text.units.hours(count().format(Math.round(seconds / 3600))),
    gate: (seconds) => (Math.round(seconds / 60) < 60 ? `${Math.round(seconds / 60)}` : span(seconds)),
  };
}

/** Made when it is first asked for: each of these takes milliseconds, and the first screen needs few of them. */
function lazily<Made>(make: () => Made): () => Made {
  let made: Made | undefined;
  return () => (made ??= make());
}

const secondsPerDay = 86_400;

/** " CET" at an instant whose wall clock comes twice, since a clock goes back within an hour or did; else nothing. */
function zoneNameWhereNeeded(locale: string, timeZone: string): (instant: number) => string {
  const named = lazily(() => new Intl.DateTimeFormat(locale, { timeZone, timeZoneName: "short" }));
  const wall = lazily(
    () => new Intl.DateTimeFormat("en", { timeZone, timeStyle: "medium", dateStyle: "short" }),
  );
  const nameAt = (instant: number): string =>
    named()
      .formatToParts(instant * 1000)
      .find(({ type }) => type === "timeZoneName")?.value ?? "";
  const wallAt = (instant: number): string => wall().format(instant * 1000);
  const clockAt = (instant: number): string => wallAt(instant).split(", ")[1] ?? "";
  const changes = new Map<number, boolean>();
  const changesWithin = (day: number): boolean => {
    const known =
      changes.get(day) ?? clockAt((day - 1) * secondsPerDay) !== clockAt((day + 2) * secondsPerDay);
    changes.set(day, known);
    return known;
  };
  return (instant) => {
    if (!changesWithin(Math.floor(instant / secondsPerDay))) return "";
    const shown = wallAt(instant);
    const isRepeated = [-3600, -1800, 1800, 3600].some((step) => wallAt(instant + step) === shown);
    return isRepeated ? ` ${nameAt(instant)}` : "";
  };
}

function spanText(seconds: number, text: Text): string {
  if (seconds > 0 && seconds < 60) return text.units.underMinute;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return text.units.minutes(`${minutes}`);
  if (minutes < 24 * 60) {
    const rest = minutes % 60;
    const hours = `${Math.floor(minutes / 60)}`;
    return rest === 0
      ? text.units.hours(hours)
      : text.units.hoursMinutes(hours, String(rest).padStart(2, "0"));
  }
  const hours = Math.round(minutes / 60);
  const days = `${Math.floor(hours / 24)}`;
  return hours % 24 === 0 ? text.units.days(days) : text.units.daysHours(days, `${hours % 24}`);
}
