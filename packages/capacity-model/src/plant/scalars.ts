import { z } from "zod";

/**
 * Scalar schemas shared by the plant's records. Each carries its range; the unit stands in the field's name.
 * Instants are integer seconds since 1970-01-01T00:00:00Z; wall-clock texts appear only in calendars.
 */
const id = <Brand extends string>() => z.string().trim().min(1).max(64).brand<Brand>();

export const PlantId = id<"PlantId">();
export type PlantId = z.infer<typeof PlantId>;
export const LineId = id<"LineId">();
export type LineId = z.infer<typeof LineId>;
export const MouldId = id<"MouldId">();
export type MouldId = z.infer<typeof MouldId>;
export const InsertId = id<"InsertId">();
export type InsertId = z.infer<typeof InsertId>;
export const SheetId = id<"SheetId">();
export type SheetId = z.infer<typeof SheetId>;
export const ProductId = id<"ProductId">();
export type ProductId = z.infer<typeof ProductId>;
export const OrderId = id<"OrderId">();
export type OrderId = z.infer<typeof OrderId>;
export const CalendarId = id<"CalendarId">();
export type CalendarId = z.infer<typeof CalendarId>;
export const TeamId = id<"TeamId">();
export type TeamId = z.infer<typeof TeamId>;
export const TrolleyId = id<"TrolleyId">();
export type TrolleyId = z.infer<typeof TrolleyId>;
export const PoolId = id<"PoolId">();
export type PoolId = z.infer<typeof PoolId>;

/** Integer seconds since the epoch, UTC. */
export const Instant = z.int().min(0).max(253_402_300_799);
export type Instant = z.infer<typeof Instant>;

/** Local date "YYYY-MM-DD" in the plant's zone. */
export const LocalDate = z.iso.date();
/** Local wall-clock time "HH:MM", 24 h. */
export const LocalTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "must be HH:MM, 00:00 to 23:59");
/** Local wall-clock date and time "YYYY-MM-DDTHH:MM". */
export const LocalDateTime = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d$/, "must be YYYY-MM-DDTHH:MM");

export const positive = z.number().positive();
export const nonNegative = z.number().nonnegative();
/** A share between 0 and 1 inclusive. */
export const share = z.number().min(0).max(1);
/** Pieces are whole; the ceiling keeps every product with a rate inside exact integers. */
export const pieces = z.int().min(0).max(1_000_000_000);
export const displayName = z.string().trim().min(1).max(120);
