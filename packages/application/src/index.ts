export type * from "./ports/index.ts";
export type * from "./errors.ts";
export type * from "./events.ts";
export type * from "./result.ts";
export { appError } from "./errors.ts";
export { ok, refused } from "./result.ts";
