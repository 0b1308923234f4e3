import { z } from "zod";

/** Live: the process answers. Ready: its store answers too. */
export const HealthResponse = z.object({
  status: z.enum(["ok", "not ready"]),
  checks: z.record(z.string(), z.enum(["up", "down"])),
});
export type HealthResponse = z.infer<typeof HealthResponse>;
