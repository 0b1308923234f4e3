/** Files in one import: a plant comes as up to so many CSV files. */
export const MOST_FILES = 20;
/** Bytes of one file as it is sent. */
export const MOST_FILE_BYTES = 32 * 1024 * 1024;
