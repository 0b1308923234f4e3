import { previewOrders } from "../import/preview-orders.ts";
import { plantNamedIn, previewPlant } from "../import/preview-plant.ts";
import type { ImportFault } from "../import/import-fault.ts";
import type { ImportOutcome } from "../import/import-outcome.ts";
import { type AppError, appError } from "../errors.ts";
import { authorise } from "../authorise.ts";
import { plantNotFound } from "../not-found.ts";
import type { ImportKind, StoredImport } from "../ports/import-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { Table } from "../ports/table.ts";
import type { TableFault, TableLimits, TableNotice, UploadedFile } from "../ports/table-reader.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

export interface PreviewImportInput extends PlantInput {
  readonly kind: ImportKind;
  readonly files: readonly UploadedFile[];
}

/** What the files would change, and what is wrong with them. Nothing has changed. */
export interface ImportPreview extends Omit<ImportOutcome, "change"> {
  readonly importId: string;
  readonly kind: ImportKind;
  /** Plant that would change: the one asked for, or another or new one that a plant file names. */
  readonly plantId: string;
  readonly files: readonly string[];
  /** False when the files hold nothing that could be taken over. */
  readonly acceptable: boolean;
  /** Revision of the order book or the plant that this was worked out against. */
  readonly revision: number;
}

/** Bounds on what is read; far above a real plant's files, far below what would hurt the server. */
const LIMITS: TableLimits = {
  maxFileBytes: 32 * 1024 * 1024,
  maxUnpackedBytes: 256 * 1024 * 1024,
  maxRowsPerTable: 100_000,
  maxColumns: 300,
  maxTables: 40,
  maxCellCharacters: 10_000,
};

/**
 * Dry run of an import: reads, checks, compares, and keeps what acceptance would write. Plant data go to the plant that
 * they name, which may be a new one; orders always go to the plant asked for.
 */
export const previewImport: UseCase<PreviewImportInput, ImportPreview> = {
  role: ({ kind }) => (kind === "plant" ? "manager" : "planner"),
  run: async (ports, { plantId: asked, kind, files }, actor) => {
    const contents = await readFiles(ports, files);
    if (!contents.ok) return contents;
    const plantId = (kind === "plant" ? plantNamedIn(contents.value.tables) : null) ?? asked;
    if (plantId !== asked) {
      const allowed = authorise(actor, plantId, "manager");
      if (!allowed.ok) return allowed;
    }
    const looked = await (kind === "orders" ? previewOfOrders : previewOfPlant)(
      ports,
      plantId,
      contents.value.tables,
    );
    if (!looked.ok) return looked;
    const { outcome, revision } = looked.value;
    const stored: StoredImport = {
      id: ports.ids.next(),
      plantId,
      baseRevision: revision,
      change: outcome.change,
      counts: outcome.counts,
      createdAt: ports.clock.now(),
      createdBy: actor.id,
      accepted: null,
    };
    await ports.store.write(async ({ imports }) => {
      await imports.insert(stored);
      return ok(null);
    });
    const { change, ...shown } = outcome;
    return ok({
      ...shown,
      faults: [...shown.faults, ...contents.value.notices.map(faultOfNotice)],
      importId: stored.id,
      kind,
      plantId,
      files: files.map((file) => file.name),
      acceptable: change !== null,
      revision,
    });
  },
};

interface Looked {
  readonly outcome: ImportOutcome;
  readonly revision: number;
}

async function previewOfOrders(
  ports: Ports,
  plantId: string,
  tables: readonly Table[],
): Promise<Result<Looked>> {
  const known = await ports.store.read(async ({ plants, orders }) => ({
    stored: await plants.get(plantId),
    book: await orders.book(plantId),
  }));
  if (known.stored === null) return refused(plantNotFound(plantId));
  const { plant } = known.stored;
  const outcome = previewOrders({ tables, plant, stored: known.book.orders, now: ports.clock.now() });
  return ok({ outcome, revision: known.book.revision });
}

async function previewOfPlant(
  ports: Ports,
  plantId: string,
  tables: readonly Table[],
): Promise<Result<Looked>> {
  const stored = await ports.store.read(({ plants }) => plants.get(plantId));
  const outcome = previewPlant({ tables, plantId, stored: stored?.plant ?? null });
  return ok({ outcome, revision: stored?.revision ?? 0 });
}

interface Contents {
  readonly tables: readonly Table[];
  readonly notices: readonly TableNotice[];
}

/** The tables of files, or why one cannot be read. */
export async function readFiles(ports: Ports, files: readonly UploadedFile[]): Promise<Result<Contents>> {
  const read = await Promise.all(files.map((file) => ports.tableReader.read(file, LIMITS)));
  const faults = read.flatMap((result) => (result.ok ? [] : result.faults));
  if (faults.length > 0) return refused(unreadable(faults));
  const contents = read.flatMap((result) => (result.ok ? [result] : []));
  return ok({
    tables: contents.flatMap(({ tables }) => tables),
    notices: contents.flatMap(({ notices }) => notices),
  });
}

function unreadable(faults: readonly TableFault[]): AppError {
  const names = [...new Set(faults.map((fault) => fault.fileName))];
  return appError(
    "unreadable-file",
    {
      title: names.length === 1 ? "The file could not be read." : "Files could not be read.",
      cause: faults[0] === undefined ? "" : `${faults[0].fileName}: ${faults[0].problem}`,
      remedy: faults[0]?.remedy ?? "",
    },
    faults.map(({ fileName, row, code, problem, remedy }) => ({
      path: row === null ? fileName : `${fileName}, row ${row}`,
      problem,
      remedy,
      cause: { kind: "file unreadable", code },
    })),
  );
}

function faultOfNotice({ sheet, row, text }: TableNotice): ImportFault {
  return {
    sheet,
    row,
    column: null,
    value: "",
    problem: text,
    remedy: "Nothing to do if that is right.",
    severity: "warning",
  };
}
