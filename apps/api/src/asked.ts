import type { Actor, Application } from "@formweek/application";
import type { FastifyRequest } from "fastify";

/** What every route needs: the use cases, and who is asking. */
export interface Asked {
  readonly app: Application;
  readonly actorOf: (request: FastifyRequest) => Actor;
}
