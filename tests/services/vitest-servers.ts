import { startTestServers } from "./test-servers.ts";

/** Run by vitest around the contract project, so that it also works alone; returns what ends the servers again. */
export async function setup(): Promise<() => Promise<void>> {
  const servers = await startTestServers();
  return servers.stop;
}
