import { BatchResponse, type BatchMode, type TableQuery } from "@formweek/contracts";
import { useMutation, type UseMutationResult } from "@tanstack/react-query";
import type { z } from "zod";
import { call, callFile, type CallError } from "./client.ts";

/** A file of enquiries, and how they share the hours. */
export interface AskedFile {
  readonly file: File;
  readonly mode: z.infer<typeof BatchMode>;
}

/** As what kind of file, and in which language, answers are taken away. */
type AnswersFile = AskedFile & TableQuery;

function askOf(plantId: string, { file, mode }: AskedFile, table: TableQuery | null) {
  const body = new FormData();
  body.append("file", file, file.name);
  const query = new URLSearchParams({ mode, ...(table ?? { format: "json" }) }).toString();
  return {
    path: `/plants/${encodeURIComponent(plantId)}/promises/file?${query}`,
    method: "POST",
    body,
  } as const;
}

/** Answers the enquiries of a file. */
export function useBatch(plantId: string): UseMutationResult<BatchResponse, CallError, AskedFile> {
  return useMutation({
    mutationFn: (asked) => call({ ...askOf(plantId, asked, null), answer: BatchResponse }),
  });
}

/** The same answers as a table to take away; worked out again, as the plan stands by then. */
export function useBatchFile(plantId: string): UseMutationResult<Blob, CallError, AnswersFile> {
  return useMutation({
    mutationFn: ({ format, language, ...asked }) => callFile(askOf(plantId, asked, { format, language })),
  });
}
