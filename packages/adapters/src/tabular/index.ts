export { tableReader } from "./table-reader.ts";
export { tableWriter } from "./table-writer.ts";
