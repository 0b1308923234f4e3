export type { OpenDatabase } from "./database.ts";
export { openPostgres, type PostgresOptions } from "./open-postgres.ts";
export { FolderInUse, lockFolder, type FolderLock } from "./pglite/folder-lock.ts";
export { openPglite, type PgliteOptions } from "./pglite/open-pglite.ts";
export { sqlUnitOfWork } from "./unit-of-work.ts";
