import { z } from "zod";
import { CalendarId, LocalDate, LocalDateTime, LocalTime, displayName } from "./scalars.ts";

/** A pause inside a shift, by wall clock; may itself cross midnight with its shift. */
export const ShiftBreak = z.object({ start: LocalTime, end: LocalTime });
export type ShiftBreak = z.infer<typeof ShiftBreak>;

/**
 * A weekly shift. `weekdays` are ISO (1 Monday … 7 Sunday) and name the day on which the shift starts.
 * `end` at or before `start` means the shift ends on the next day; equal means 24 hours by wall clock.
 */
export const WeeklyShift = z.object({
  name: displayName,
  weekdays: z.array(z.int().min(1).max(7)).min(1).max(7),
  start: LocalTime,
  end: LocalTime,
  breaks: z.array(ShiftBreak).max(6).default([]),
});
export type WeeklyShift = z.infer<typeof WeeklyShift>;

/** A dated spell without work, half-open [from, to) by the plant's wall clock. */
export const Closure = z.object({ from: LocalDateTime, to: LocalDateTime, reason: displayName });
export type Closure = z.infer<typeof Closure>;

/** A shift worked once, on top of the weekly ones; it wins over a closure on the same hours. */
export const ExtraShift = z.object({
  name: displayName,
  date: LocalDate,
  start: LocalTime,
  end: LocalTime,
  breaks: z.array(ShiftBreak).max(6).default([]),
});
export type ExtraShift = z.infer<typeof ExtraShift>;

/** Working time of a line, a setter team or an operator pool. An empty calendar never opens. */
export const WorkCalendar = z.object({
  id: CalendarId,
  name: displayName,
  shifts: z.array(WeeklyShift).max(60),
  closures: z.array(Closure).max(2000).default([]),
  extraShifts: z.array(ExtraShift).max(2000).default([]),
});
export type WorkCalendar = z.infer<typeof WorkCalendar>;
