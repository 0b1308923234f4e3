import type { Health } from "@formweek/composition";
import { createServer, type Server } from "node:http";

/** Answers any request on this machine's port: 200 when the worker can work, 503 when it can not, with the parts as JSON. */
export function serveHealth(port: number, health: () => Promise<Health>): Server {
  const server = createServer((_, response) => {
    void health().then((state) => {
      response.writeHead(state.ready ? 200 : 503, { "content-type": "application/json" });
      response.end(JSON.stringify(state));
    });
  });
  return server.listen(port, "127.0.0.1");
}
