import fastifyStatic from "@fastify/static";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { sendProblem, shellProblems } from "./error-handler.ts";
import type { WireServer } from "./wire-type-provider.ts";

/** Addresses of the board's pages are its own business: each is answered with the one page. Files that carry a hash in their name are kept for a year. */
export async function serveBoard(server: WireServer, folder: string | null): Promise<void> {
  const hasBoard = folder !== null && existsSync(join(folder, "index.html"));
  if (hasBoard) {
    await server.register(fastifyStatic, {
      root: folder,
      wildcard: false,
      cacheControl: false,
      // The build has laid compressed twins beside the files.
      preCompressed: true,
      setHeaders: (reply, path) => {
        reply.header(
          "cache-control",
          path.includes("/assets/") ? "public, max-age=31536000, immutable" : "no-cache",
        );
      },
    });
  }
  server.setNotFoundHandler((request, reply) => {
    const isPage = hasBoard && request.method === "GET" && !request.url.startsWith("/api/");
    const wantsPage = isPage && (request.headers.accept ?? "").includes("text/html");
    return wantsPage
      ? reply.sendFile("index.html")
      : sendProblem(reply, request, shellProblems["no-such-route"]);
  });
}
