import { z } from "zod";
import { LineId, LocalDate, LocalTime, PoolId, TeamId, displayName } from "./scalars.ts";
import { ShiftBreak } from "./work-calendar.ts";

/**
 * A shift worked once by the lines and people that it names, on top of their calendars, which others may share. The date is
 * that on which it starts; `end` at or before `start` lies on the next day. A line's own closures win over it.
 */
export const AddedShift = z.object({
  date: LocalDate,
  name: displayName,
  start: LocalTime,
  end: LocalTime,
  breaks: z.array(ShiftBreak).max(6).default([]),
  lineIds: z.array(LineId).max(200),
  teamIds: z.array(TeamId).max(200).default([]),
  /** Heads that come for this shift, on top of those whose calendars are open then. */
  operators: z
    .array(z.object({ poolId: PoolId, heads: z.number().positive().max(500).multipleOf(0.05) }))
    .max(50)
    .default([]),
});
export type AddedShift = z.infer<typeof AddedShift>;
