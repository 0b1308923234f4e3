import { lockFolder } from "@formweek/adapters/sql";

/** Run as a process of its own: takes the folder named in its arguments, says how that went, and stays until it is ended. */
const [folder = ""] = process.argv.slice(2);
try {
  lockFolder(folder);
  process.stdout.write("taken\n");
} catch (error) {
  process.stdout.write(`${error instanceof Error ? error.name : "unknown"}\n`);
}
setInterval(() => undefined, 60_000);
