import type { TableReader } from "@formweek/application";
import { readCsv } from "./read-csv.ts";
import { readXlsx } from "./read-xlsx.ts";
import { tableFault } from "./table-fault.ts";

/** Reads CSV and XLSX files by the ending of their name. */
export const tableReader: TableReader = {
  read: async (file, limits) => {
    if (file.bytes.length > limits.maxFileBytes) {
      const most = `${String(Math.floor(limits.maxFileBytes / 1_048_576))} MB`;
      return {
        ok: false,
        faults: [tableFault(file.name, "too-large", [`is larger than ${most}`, "Load it in parts."])],
      };
    }
    const ending = file.name.toLowerCase().replace(/^.*\./, "");
    if (ending === "xlsx" || ending === "xlsm") return readXlsx(file, limits);
    if (ending === "csv" || ending === "txt" || ending === "tsv") return readCsv(file, limits);
    return {
      ok: false,
      faults: [
        tableFault(file.name, "unknown-format", ["is neither .csv nor .xlsx", "Save it as .xlsx or .csv."]),
      ],
    };
  },
};
