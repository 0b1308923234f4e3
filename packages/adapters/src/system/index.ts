export { systemClock } from "./clock.ts";
export { sortableIds } from "./ids.ts";
export { jsonLog, type LogLevel } from "./log.ts";
export { startThread, type StartThread } from "./start-thread.ts";
