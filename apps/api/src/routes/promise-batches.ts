import type { UploadedFile } from "@formweek/application";
import { BatchFileQuery, BatchRequest, BatchResponse } from "@formweek/contracts";
import type { Asked } from "../asked.ts";
import { shellProblems } from "../error-handler.ts";
import { Refusal, valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { sendFile } from "./exports.ts";
import { filesOf } from "./imports.ts";
import { PlantPath, failures } from "./route-schemas.ts";
import { MOST_FILE_BYTES } from "./upload-limits.ts";

/** Room for as many enquiries as are answered at once. */
const MOST_BATCH_BYTES = 256 * 1024;

/** Many enquiries in one go, as a list or as a file. Nothing is booked. */
export function promiseBatchRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.post(
    "/api/plants/:plantId/promises/batch",
    {
      bodyLimit: MOST_BATCH_BYTES,
      schema: {
        tags: ["promises"],
        summary: "Answer many enquiries: each alone, each beside those before it, or all together",
        params: PlantPath,
        body: BatchRequest,
        response: { 200: BatchResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, ...request.body };
      return valueOf(await app.queries.askBatch(input, actorOf(request)));
    },
  );

  server.post(
    "/api/plants/:plantId/promises/file",
    {
      bodyLimit: MOST_FILE_BYTES,
      schema: {
        tags: ["promises"],
        summary: "Answer the enquiries of a file (.csv, .xlsx), as JSON or as a table to take away",
        consumes: ["multipart/form-data"],
        params: PlantPath,
        querystring: BatchFileQuery,
        response: { 200: BatchResponse, ...failures },
      },
    },
    async (request, reply) => {
      const file = onlyFile(await filesOf(request));
      const { mode, format, language } = request.query;
      const input = { ...request.params, mode, file };
      if (format === "json") return valueOf(await app.queries.askBatchFile(input, actorOf(request)));
      const written = valueOf(
        await app.queries.exportBatch({ ...input, format, language }, actorOf(request)),
      );
      return sendFile(reply, format, written);
    },
  );
}

function onlyFile(files: readonly UploadedFile[]): UploadedFile {
  const [file, ...others] = files;
  if (file === undefined || others.length > 0) throw new Refusal(shellProblems["malformed-body"]);
  return file;
}
