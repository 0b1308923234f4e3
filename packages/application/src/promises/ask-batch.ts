import { readFiles } from "../commands/preview-import.ts";
import type { UploadedFile } from "../ports/table-reader.ts";
import { type Result, ok } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { fileDate, fileOf, fileStem, type TableFormat, type WrittenFile } from "../queries/written-file.ts";
import { type AnsweredBatch, type BatchMode, answerBatch } from "./answer-batch.ts";
import type { TableLanguage } from "../export/table-words.ts";
import { batchTable } from "./batch-table.ts";
import type { DeskKeeper } from "./desk-keeper.ts";
import type { Enquiry } from "./promise-answer.ts";
import { type ListedEnquiry, readEnquiries } from "./read-enquiries.ts";

export interface BatchInput extends PlantInput {
  readonly mode: BatchMode;
  readonly enquiries: readonly Enquiry[];
}

export interface BatchFileInput extends PlantInput {
  readonly mode: BatchMode;
  readonly file: UploadedFile;
}

/** Answers many enquiries at once; nothing is held. */
export const askBatch = (desks: DeskKeeper): UseCase<BatchInput, AnsweredBatch> => ({
  role: "sales",
  run: async (ports, { plantId, mode, enquiries }) => {
    const opened = await desks.open(ports, plantId);
    if (!opened.ok) return opened;
    const listed = enquiries.map((enquiry, place): ListedEnquiry => ({
      row: place + 1,
      reference: "",
      enquiry,
    }));
    return answerBatch(opened.value.standing, { enquiries: listed, mode }, ports.clock);
  },
});

/** The same for the rows of a file. */
export const askBatchFile = (desks: DeskKeeper): UseCase<BatchFileInput, AnsweredBatch> => ({
  role: "sales",
  run: (ports, input) => answeredFile(desks, ports, input),
});

/** The same as a table to take away. */
export const exportBatch = (
  desks: DeskKeeper,
): UseCase<
  BatchFileInput & { readonly format: TableFormat; readonly language: TableLanguage },
  WrittenFile
> => ({
  role: "sales",
  run: async (ports, { format, language, ...input }) => {
    const answered = await answeredFile(desks, ports, input);
    if (!answered.ok) return answered;
    const opened = await desks.open(ports, input.plantId);
    if (!opened.ok) return opened;
    const { timeZone } = opened.value.standing.frame.plant;
    const day = fileDate(timeZone, ports.clock.now(), "day");
    const stem = `${fileStem(input.plantId)}-promises-${day}`;
    return ok(
      await fileOf(ports.tableWriter, batchTable(answered.value, timeZone, language), { stem, format }),
    );
  },
});

async function answeredFile(
  desks: DeskKeeper,
  ports: Parameters<DeskKeeper["open"]>[0],
  { plantId, mode, file }: BatchFileInput,
): Promise<Result<AnsweredBatch>> {
  const contents = await readFiles(ports, [file]);
  if (!contents.ok) return contents;
  const enquiries = readEnquiries(contents.value.tables);
  if (!enquiries.ok) return enquiries;
  const opened = await desks.open(ports, plantId);
  if (!opened.ok) return opened;
  return answerBatch(opened.value.standing, { enquiries: enquiries.value, mode }, ports.clock);
}
