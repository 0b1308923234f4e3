import { jsonLog, sortableIds, startThread, systemClock } from "@formweek/adapters/system";
import { tableReader, tableWriter } from "@formweek/adapters/tabular";
import { threadSolveRunner } from "@formweek/adapters/thread";
import { createApplication, type Log, type Ports, type SolveRunner } from "@formweek/application";
import { closingInReverse, type Closing } from "./closing.ts";
import type { Config } from "./config.ts";
import { embeddedServices } from "./embedded-services.ts";
import { joinRuntime, type Runtime } from "./runtime.ts";
import type { ProcessRole, Services } from "./services.ts";

/** Opens what the settings ask for and joins it to the use cases; on failure, what was opened is closed again. */
export async function compose(config: Config, role: ProcessRole): Promise<Runtime> {
  const log = jsonLog(config.logLevel);
  const closing = closingInReverse();
  try {
    const services = await openServices(config, { log, role }, closing);
    const ports: Ports = { ...offlinePorts(), log, ...services };
    return joinRuntime({ app: createApplication(ports), services, log, closing });
  } catch (error) {
    await closing.closeAll();
    throw error;
  }
}

/** The one place where the modes part. The drivers of the servers are loaded only where they are used. */
async function openServices(
  config: Config,
  process: { readonly log: Log; readonly role: ProcessRole },
  closing: Closing,
): Promise<Services> {
  if (config.mode === "embedded") return embeddedServices(config, process.log, closing);
  const { distributedServices } = await import("./distributed-services.ts");
  return distributedServices(config, process, closing);
}

/** The ports that need neither a server nor a folder: all that the command line uses. */
export type OfflinePorts = Pick<Ports, "clock" | "ids" | "solver" | "tableReader" | "tableWriter">;

/** Clock, ids, tables and the solver in its thread. Holds nothing that must be closed. */
export function offlinePorts(): OfflinePorts {
  return { clock: systemClock, ids: sortableIds(), solver: solver(), tableReader, tableWriter };
}

const solver = (): SolveRunner =>
  threadSolveRunner({ startThread, progressEveryMs: 250, plansEveryMs: 1000, stopGraceMs: 15_000 });
