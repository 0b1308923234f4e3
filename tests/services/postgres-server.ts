import { spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { endProcess, freePort, startUntilReady, type StartedServer } from "./server-process.ts";

const DEBIAN_ROOT = "/usr/lib/postgresql";

/** The folder with the newest PostgreSQL server programs Debian installed, or none. */
export function postgresPrograms(): string | undefined {
  if (!existsSync(DEBIAN_ROOT)) return undefined;
  return readdirSync(DEBIAN_ROOT)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(DEBIAN_ROOT, version, "bin"))
    .find((folder) => existsSync(join(folder, "initdb")));
}

/**
 * Starts a PostgreSQL cluster of its own in a temporary folder, on a free port, with the server's default settings.
 * PostgreSQL refuses to run as root; then everything runs as Debian's user `postgres`.
 */
export async function startPostgres(): Promise<StartedServer> {
  const programs = postgresPrograms();
  if (programs === undefined) return { kind: "unavailable", why: "no PostgreSQL server is installed" };
  const isRoot = process.getuid?.() === 0;
  const account = isRoot ? accountOf("postgres") : undefined;
  if (isRoot && account === undefined)
    return { kind: "unavailable", why: "there is no user postgres to run it as" };
  const folder = mkdtempSync(join(tmpdir(), "formweek-postgres-"));
  if (account !== undefined) chownSync(folder, account.uid, account.gid);
  const options = { ...account, cwd: folder };
  const port = await freePort();
  const cluster = join(folder, "cluster");
  const init = spawnSync(
    join(programs, "initdb"),
    ["-D", cluster, "-U", "formweek", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8"],
    { ...options, encoding: "utf8" },
  );
  if (init.status !== 0) return { kind: "unavailable", why: `initdb failed: ${init.stderr}` };
  const child = await startUntilReady(
    [join(programs, "postgres"), "-D", cluster, "-p", String(port), "-k", folder, "-h", "127.0.0.1"],
    options,
    () => {
      const ask = ["-q", "-h", "127.0.0.1", "-p", String(port), "-U", "formweek", "-d", "postgres"];
      return spawnSync(join(programs, "pg_isready"), ask).status === 0;
    },
  );
  const stop = async (): Promise<void> => {
    await endProcess(child, "SIGINT"); // "fast shutdown": sessions are ended, data is written
    rmSync(folder, { recursive: true, force: true });
  };
  return {
    kind: "running",
    server: { url: `postgres://formweek@127.0.0.1:${String(port)}/postgres`, stop },
  };
}

function accountOf(name: string): { readonly uid: number; readonly gid: number } | undefined {
  const [uid, gid] = ["-u", "-g"].map((flag) => spawnSync("id", [flag, name], { encoding: "utf8" }));
  if (uid?.status !== 0 || gid?.status !== 0) return undefined;
  return { uid: Number(uid.stdout), gid: Number(gid.stdout) };
}
