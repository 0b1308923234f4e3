import type { ImportPreview, UploadedFile } from "@formweek/application";
import { AcceptImportRequest, AcceptImportResponse, ImportQuery, ImportReport } from "@formweek/contracts";
import type { FastifyRequest } from "fastify";
import type { Asked } from "../asked.ts";
import { shellProblems } from "../error-handler.ts";
import { Refusal, valueOf } from "../refusal.ts";
import type { WireServer } from "../wire-type-provider.ts";
import { termsOnTheWire } from "./orders.ts";
import { ImportPath, PlantPath, failures } from "./route-schemas.ts";
import { MOST_FILE_BYTES } from "./upload-limits.ts";

/** So many changes of orders are listed in a report. */
const MOST_CHANGES = 2000;

/** Imports in two steps: a dry run, then its acceptance. */
export function importRoutes(server: WireServer, { app, actorOf }: Asked): void {
  server.post(
    "/api/plants/:plantId/imports",
    {
      bodyLimit: MOST_FILE_BYTES,
      schema: {
        tags: ["imports"],
        summary: "Check files (.csv, .xlsx) without changing anything",
        consumes: ["multipart/form-data"],
        params: PlantPath,
        querystring: ImportQuery,
        response: { 200: ImportReport, ...failures },
      },
    },
    async (request) => {
      const files = await filesOf(request);
      const input = { ...request.params, kind: request.query.kind, files };
      return reportOnTheWire(valueOf(await app.commands.previewImport(input, actorOf(request))));
    },
  );

  server.post(
    "/api/plants/:plantId/imports/:importId/accept",
    {
      schema: {
        tags: ["imports"],
        summary: "Take over a checked import; accepting again answers the same",
        params: ImportPath,
        body: AcceptImportRequest,
        response: { 200: AcceptImportResponse, ...failures },
      },
    },
    async (request) => {
      const input = { ...request.params, revision: request.body.revision };
      return valueOf(await app.commands.acceptImport(input, actorOf(request)));
    },
  );
}

/** The files of a form. */
export async function filesOf(request: FastifyRequest): Promise<readonly UploadedFile[]> {
  if (!request.isMultipart()) throw new Refusal(shellProblems["unsupported-media-type"]);
  const files: UploadedFile[] = [];
  for await (const part of request.files()) {
    files.push({ name: baseName(part.filename), bytes: await part.toBuffer() });
  }
  if (files.length === 0) throw new Refusal(shellProblems["malformed-body"]);
  return files;
}

/** The last step of a path, of either kind; at most 120 characters, its ending kept. */
function baseName(path: string): string {
  return (path.split(/[/\\]/).at(-1) ?? path).slice(-120);
}

function reportOnTheWire(preview: ImportPreview) {
  const { importId, kind, plantId, files, rows, counts, bad, cannotBePlannedCount, acceptable, revision } =
    preview;
  const { faults, cannotBePlanned, truncated } = preview;
  const changes = preview.changes.slice(0, MOST_CHANGES).map(({ before, after }) => ({
    before: before === null ? null : termsOnTheWire(before),
    after: termsOnTheWire(after),
  }));
  const summary = { ...counts, bad, cannotBePlanned: cannotBePlannedCount };
  return {
    importId,
    kind,
    plantId,
    files,
    rows,
    summary,
    acceptable,
    faults,
    cannotBePlanned,
    changes,
    truncated,
    revision,
  };
}
