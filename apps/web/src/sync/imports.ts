import { AcceptImportResponse, ImportReport, type ImportKind } from "@formweek/contracts";
import { useMutation, useQueryClient, type UseMutationResult } from "@tanstack/react-query";
import { call, type CallError } from "./client.ts";
import { deskOfBrowser } from "./desk.ts";
import { keys } from "./queries.ts";

/** Sends files for a dry run: the server answers what it would do and changes nothing. */
export function useDryRun(
  plantId: string,
  kind: ImportKind,
): UseMutationResult<ImportReport, CallError, readonly File[]> {
  return useMutation({
    mutationFn: (files) => {
      const form = new FormData();
      for (const file of files) form.append("file", file, file.name);
      return call({
        path: `/plants/${encodeURIComponent(plantId)}/imports?kind=${kind}`,
        answer: ImportReport,
        method: "POST",
        body: form,
      });
    },
  });
}

/** Takes a checked import over; refused with 409 when the data changed since the check. */
export function useAcceptImport(): UseMutationResult<AcceptImportResponse, CallError, ImportReport> {
  const client = useQueryClient();
  return useMutation({
    mutationFn: ({ importId, plantId, revision }) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/imports/${encodeURIComponent(importId)}/accept`,
        answer: AcceptImportResponse,
        method: "POST",
        body: { revision, desk: deskOfBrowser() },
      }),
    onSuccess: async (_applied, { kind, plantId }) => {
      await client.invalidateQueries({ queryKey: keys.orders(plantId) });
      if (kind === "plant") {
        await Promise.all(
          [keys.plants, keys.plant(plantId), keys.rates(plantId)].map((queryKey) =>
            client.invalidateQueries({ queryKey }),
          ),
        );
      }
    },
  });
}
