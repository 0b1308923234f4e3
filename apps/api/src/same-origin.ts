import type { FastifyInstance, FastifyRequest } from "fastify";
import { sendProblem, shellProblems } from "./error-handler.ts";

/** Names and addresses that only this machine reaches (RFC 5735, section 3; RFC 4291, section 2.5.3; RFC 6761, section 6.3). */
const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])$/;

/**
 * Refuses what pages of other sites could send: changing requests with a foreign Origin, and, where only this machine may
 * ask, any request that names another host (a name made to point here).
 */
export function refuseForeignOrigins(server: FastifyInstance, onlyLoopbackNames: boolean): void {
  server.addHook("onRequest", async (request, reply) => {
    const foreignName = onlyLoopbackNames && !LOOPBACK.test(hostName(request.host));
    if (foreignName || isForeignChange(request))
      return sendProblem(reply, request, shellProblems["foreign-origin"]);
  });
}

function isForeignChange(request: FastifyRequest): boolean {
  if (request.method === "GET" || request.method === "HEAD" || request.method === "OPTIONS") return false;
  const { origin } = request.headers;
  if (origin === undefined) return request.headers["sec-fetch-site"] === "cross-site";
  return URL.canParse(origin) ? new URL(origin).host !== request.host : true;
}

/** "localhost:4310" → "localhost", "[::1]:4310" → "[::1]". */
function hostName(host: string): string {
  return host.replace(/:\d+$/, "").toLowerCase();
}
