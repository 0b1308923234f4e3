export { compose, offlinePorts, type OfflinePorts } from "./compose.ts";
export { readConfig, readWorkerConfig, type Config, type ConfigFault, type ConfigResult } from "./config.ts";
export type { Health, Runtime } from "./runtime.ts";
export type { ProcessRole } from "./services.ts";
