import type { ProblemData } from "../problem/problem-data.ts";

function twoDigits(value: number): string {
  return value < 10 ? `0${value}` : `${value}`;
}

/** A duration as "1 d 02:03:04", days left out when there are none; negative ones with a leading minus. */
export function sayDuration(seconds: number): string {
  const whole = Math.abs(seconds);
  const days = Math.floor(whole / 86_400);
  const rest = whole - days * 86_400;
  const hours = Math.floor(rest / 3_600);
  const minutes = Math.floor((rest - hours * 3_600) / 60);
  const clock = `${twoDigits(hours)}:${twoDigits(minutes)}:${twoDigits(rest - hours * 3_600 - minutes * 60)}`;
  return `${seconds < 0 ? "-" : ""}${days > 0 ? `${days} d ` : ""}${clock}`;
}

/** An instant as the time passed since the horizon's start: the audit has no calendar of days. */
export function sayInstant(problem: ProblemData, at: number): string {
  const passed = at - problem.horizon.start;
  return passed < 0
    ? `${sayDuration(-passed)} before the plan's start`
    : `${sayDuration(passed)} after the plan's start`;
}

/** Hundredths of a head as heads. */
export function sayHeads(hundredths: number): string {
  return `${hundredths / 100}`;
}

/** Any value, hostile ones included, as a short text. */
export function sayValue(value: unknown): string {
  switch (typeof value) {
    case "string":
      return `"${value.slice(0, 60)}"`;
    case "number":
    case "boolean":
    case "undefined":
      return `${value}`;
    case "object":
      if (value === null) return "null";
      return Array.isArray(value) ? "a list" : "a record";
    default:
      return `a ${typeof value}`;
  }
}
