import { z } from "zod";
import { CalendarId, PoolId, TeamId, TrolleyId, displayName } from "./scalars.ts";

/** A team of setters: does one change at a time, in its own hours. */
export const SetterTeam = z.object({
  id: TeamId,
  name: displayName,
  calendarId: CalendarId,
  /** Setters in the team: mechanical tasks of a change are shared among them. */
  setters: z.int().min(1).max(6),
});
export type SetterTeam = z.infer<typeof SetterTeam>;

/** Motorised trolley on which moulds travel; one mould at a time. */
export const Trolley = z.object({ id: TrolleyId, name: displayName });
export type Trolley = z.infer<typeof Trolley>;

/** Operators as heads per calendar; heads of calendars open at the same instant add up. */
export const OperatorPool = z.object({
  id: PoolId,
  name: displayName,
  crews: z
    .array(z.object({ calendarId: CalendarId, heads: z.number().min(0).max(500).multipleOf(0.05) }))
    .min(1)
    .max(20),
});
export type OperatorPool = z.infer<typeof OperatorPool>;
