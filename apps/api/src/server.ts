import compress from "@fastify/compress";
import helmet from "@fastify/helmet";
import multipart from "@fastify/multipart";
import rateLimit from "@fastify/rate-limit";
import fastify from "fastify";
import type { Log } from "@formweek/application";
import { serializerCompiler, validatorCompiler } from "fastify-type-provider-zod";
import type { Asked } from "./asked.ts";
import { answerFailures } from "./error-handler.ts";
import { describeInterface } from "./openapi.ts";
import { eventRoutes } from "./routes/events.ts";
import { exportRoutes, tableRoutes } from "./routes/exports.ts";
import { holdRoutes } from "./routes/holds.ts";
import { promiseBatchRoutes } from "./routes/promise-batches.ts";
import { promiseRoutes } from "./routes/promises.ts";
import { type ReadinessCheck, healthRoutes } from "./routes/health.ts";
import { MOST_FILES, MOST_FILE_BYTES } from "./routes/upload-limits.ts";
import { importRoutes } from "./routes/imports.ts";
import { loadRoutes } from "./routes/load.ts";
import { orderRoutes } from "./routes/orders.ts";
import { pinRoutes } from "./routes/pins.ts";
import { planRoutes } from "./routes/plans.ts";
import { plantRoutes } from "./routes/plants.ts";
import { rateRoutes } from "./routes/rates.ts";
import { scenarioRoutes } from "./routes/scenarios.ts";
import { solveRoutes } from "./routes/solves.ts";
import { workingPlanRoutes } from "./routes/working-plan.ts";
import { refuseForeignOrigins } from "./same-origin.ts";
import { serveBoard } from "./serve-board.ts";
import type { WireServer } from "./wire-type-provider.ts";

const CLOSE_GRACE_MS = 2_000;
const LARGEST_JSON_BYTES = 64 * 1024;

export interface ServerOptions extends Asked {
  readonly readiness: ReadinessCheck;
  /** Folder of the built board; null: the interface alone. */
  readonly boardFolder: string | null;
  /** Only requests that name this machine are answered. */
  readonly onlyLoopbackNames: boolean;
  readonly requestsPerMinute: number;
  readonly log: Log;
}

/** The HTTP server, ready to be asked but not listening. */
export async function buildServer(options: ServerOptions): Promise<WireServer> {
  const server: WireServer = fastify({
    logger: false,
    bodyLimit: LARGEST_JSON_BYTES,
    requestTimeout: 120_000,
    forceCloseConnections: "idle",
    routerOptions: { maxParamLength: 128 },
  });
  server.removeContentTypeParser("text/plain");
  server.setValidatorCompiler(validatorCompiler);
  server.setSerializerCompiler(serializerCompiler);
  answerFailures(server, options.log);
  refuseForeignOrigins(server, options.onlyLoopbackNames);
  await server.register(helmet, securityHeaders);
  await server.register(rateLimit, { max: options.requestsPerMinute, timeWindow: "1 minute" });
  await server.register(compress, { threshold: 2048 });
  await server.register(multipart, { limits: { fileSize: MOST_FILE_BYTES, files: MOST_FILES, fields: 0 } });
  await describeInterface(server);
  await server.register((scope: WireServer, _: object, done: () => void) => {
    apiRoutes(scope, options);
    done();
  });
  cutOffOnClose(server);
  await serveBoard(server, options.boardFolder);
  await server.ready();
  return server;
}

function apiRoutes(server: WireServer, options: ServerOptions): void {
  healthRoutes(server, options.readiness);
  plantRoutes(server, options);
  rateRoutes(server, options);
  orderRoutes(server, options);
  loadRoutes(server, options);
  pinRoutes(server, options);
  promiseRoutes(server, options);
  promiseBatchRoutes(server, options);
  holdRoutes(server, options);
  importRoutes(server, options);
  solveRoutes(server, options);
  scenarioRoutes(server, options);
  planRoutes(server, options);
  workingPlanRoutes(server, options);
  exportRoutes(server, options);
  tableRoutes(server, options);
  eventRoutes(server, options);
}

/** Closing lets running requests finish, for a while: a connection that says nothing does not hold it up. */
function cutOffOnClose(server: WireServer): void {
  server.addHook("preClose", (done) => {
    setTimeout(() => server.server.closeAllConnections(), CLOSE_GRACE_MS).unref();
    done();
  });
}

/** The page may load nothing but itself. HTTPS is the business of what stands before the server, so it is not forced here. */
const securityHeaders = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'self'"],
      imgSrc: ["'self'", "data:"],
      styleSrc: ["'self'", "'unsafe-inline'"],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  hsts: false,
};
