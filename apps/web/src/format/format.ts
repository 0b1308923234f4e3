import type { Text } from "../text/text.ts";

/** Numbers in the reader's locale and times in the plant's zone. Instants are seconds since the epoch. */
export interface Format {
  readonly count: (value: number) => string;
  readonly decimal: (value: number, digits: number) => string;
  readonly percent: (share: number) => string;
  /** Percent with one decimal place at most. */
  readonly percentFine: (share: number) => string;
  readonly money: (value: number) => string;
  /** Money with cents where it has any. */
  readonly moneyFine: (value: number) => string;
  /** "Thu", of an instant in UTC. */
  readonly weekday: (instant: number) => string;
  /** "Thu 3 Dec 14:00" */
  readonly instant: (instant: number) => string;
  /** "14:00" */
  readonly clock: (instant: number) => string;
  /** "Thu 3 Dec" */
  readonly day: (instant: number) => string;
  /** "Thursday 3 December" */
  readonly longDay: (instant: number) => string;
  /** "3 Dec" */
  readonly shortDay: (instant: number) => string;
  /** "40 min", "1 h 20", "2 d 3 h": rounded to the last unit shown; negative spans as their size. */
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
  const count = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  const percent = new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 0 });
  const money = new Intl.NumberFormat(locale, { style: "currency", currency, maximumFractionDigits: 0 });
  const percentFine = new Intl.NumberFormat(locale, { style: "percent", maximumFractionDigits: 1 });
  const moneyFine = new Intl.NumberFormat(locale, {
    style: "currency",
    currency,
    trailingZeroDisplay: "stripIfInteger",
  });
  const weekday = new Intl.DateTimeFormat(locale, { weekday: "short", timeZone: "UTC" });
  const decimals = [0, 1, 2, 3].map(
    (digits) =>
      new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits }),
  );
  const zoned = (options: Intl.DateTimeFormatOptions): ((instant: number) => string) => {
    const format = new Intl.DateTimeFormat(locale, { ...options, timeZone });
    return (instant) => format.format(instant * 1000).replace(/,/g, "");
  };
  const clock = { hour: "2-digit", minute: "2-digit", hourCycle: "h23" } as const;
  const span = (seconds: number): string => spanText(Math.abs(seconds), text);
  return {
    count: (value) => count.format(value),
    decimal: (value, digits) => (decimals[digits] ?? count).format(value),
    percent: (share) => percent.format(share),
    percentFine: (share) => percentFine.format(share),
    money: (value) => money.format(value),
    moneyFine: (value) => moneyFine.format(value),
    weekday: (instant) => weekday.format(instant * 1000),
    instant: zoned({ weekday: "short", day: "numeric", month: "short", ...clock }),
    clock: zoned(clock),
    day: zoned({ weekday: "short", day: "numeric", month: "short" }),
    longDay: zoned({ weekday: "long", day: "numeric", month: "long" }),
    shortDay: zoned({ day: "numeric", month: "short" }),
    span,
    hours: (seconds) =>
      seconds < 3600 ? span(seconds) : text.units.hours(count.format(Math.round(seconds / 3600))),
    gate: (seconds) => (Math.round(seconds / 60) < 60 ? `${Math.round(seconds / 60)}` : span(seconds)),
  };
}

function spanText(seconds: number, text: Text): string {
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
