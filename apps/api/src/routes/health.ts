import { HealthResponse } from "@formweek/contracts";
import type { WireServer } from "../wire-type-provider.ts";

/** Asks what the server stands on. */
export type ReadinessCheck = () => Promise<{
  readonly ready: boolean;
  readonly parts: readonly { readonly name: string; readonly up: boolean }[];
}>;

/** Whether the process lives, and whether it can serve. */
export function healthRoutes(server: WireServer, readiness: ReadinessCheck): void {
  server.get(
    "/api/health/live",
    { schema: { tags: ["health"], summary: "The process answers", response: { 200: HealthResponse } } },
    () => ({ status: "ok" as const, checks: {} }),
  );

  server.get(
    "/api/health/ready",
    {
      schema: {
        tags: ["health"],
        summary: "The process and what it stands on can serve",
        response: { 200: HealthResponse, 503: HealthResponse },
      },
    },
    async (_request, reply) => {
      const { ready, parts } = await readiness();
      const checks = Object.fromEntries(parts.map(({ name, up }) => [name, up ? "up" : "down"] as const));
      return reply.code(ready ? 200 : 503).send({ status: ready ? "ok" : "not ready", checks });
    },
  );
}
