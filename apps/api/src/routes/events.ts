import { isoInstant, type Log, type PlantMessage as Message } from "@formweek/application";
import { PlantMessage } from "@formweek/contracts";
import { z } from "zod";
import type { Asked } from "../asked.ts";
import { valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { PlantPath, failures } from "./route-schemas.ts";

const HEARTBEAT_MS = 20_000;
/** A reader that does not take what it is sent is cut off; it comes back with its last event id. */
const LONGEST_BACKLOG_BYTES = 1_000_000;

const EventHeaders = z.looseObject({
  "last-event-id": z
    .string()
    .regex(/^\d{1,15}$/, "must be a sequence number")
    .optional()
    .describe("Sequence of the last event seen: what came after it is sent first"),
});

/** A plant's events as server-sent events. */
export function eventRoutes(server: WireServer, { app, actorOf, log }: Asked & { readonly log: Log }): void {
  const open = new Set<() => void>();
  server.addHook("preClose", (done) => {
    for (const end of open) end();
    done();
  });

  server.get(
    "/api/plants/:plantId/events",
    {
      schema: {
        tags: ["events"],
        summary: "Events of a plant as a stream (text/event-stream): event name = type, id = sequence",
        params: PlantPath,
        headers: EventHeaders,
        produces: ["text/event-stream"],
        response: { 200: PlantMessage.describe("Data of one event of the stream"), ...failures },
      },
    },
    async (request, reply) => {
      const lastId = request.headers["last-event-id"];
      const { raw } = reply;
      const early: string[] = [];
      let write = (text: string): void => void early.push(text);
      const watching = valueOf(
        await app.queries.watchPlant(
          {
            ...request.params,
            afterSequence: lastId === undefined ? null : Number(lastId),
            onMessage: (message) => write(eventText(message)),
          },
          actorOf(request),
        ),
      );
      reply.hijack();
      raw.writeHead(200, streamHeaders(reply.getHeaders()));
      raw.write(["retry: 2000\n\n", ...early].join(""));
      write = (text) => {
        raw.write(text);
        if (raw.writableLength > LONGEST_BACKLOG_BYTES) raw.destroy();
      };
      const heartbeat = setInterval(() => write(": still here\n\n"), HEARTBEAT_MS);
      const end = (): void => void raw.end();
      open.add(end);
      raw.on("close", () => {
        clearInterval(heartbeat);
        open.delete(end);
        watching
          .close()
          .catch((error: unknown) => log.warn("A watcher did not close", { reason: String(error) }));
      });
    },
  );
}

function streamHeaders(already: Readonly<Record<string, number | string | string[] | undefined>>) {
  const kept = Object.entries(already).filter(
    (entry): entry is [string, number | string | string[]] => entry[1] !== undefined,
  );
  return {
    ...Object.fromEntries(kept),
    "content-type": "text/event-stream; charset=utf-8",
    "cache-control": "no-store",
    connection: "close",
    "x-accel-buffering": "no",
  };
}

/** One event in the format of the WHATWG HTML standard, server-sent events. */
function eventText({ sequence, at, body }: Message): string {
  const data: PlantMessage = { ...body, at: isoInstant(at) };
  const id = sequence === null ? "" : `id: ${sequence}\n`;
  return `event: ${body.type}\n${id}data: ${JSON.stringify(data)}\n\n`;
}
