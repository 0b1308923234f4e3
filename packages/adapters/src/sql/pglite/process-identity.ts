import { readFileSync } from "node:fs";

/** Names one process for ever: its number is given out again later, its start time is not. */
export interface ProcessIdentity {
  readonly pid: number;
  /** Clock ticks since the machine started, where the operating system tells; else null. */
  readonly startTicks: string | null;
}

export const ownIdentity = (): ProcessIdentity => ({
  pid: process.pid,
  startTicks: startTicksOf(process.pid),
});

/** True when exactly this process still runs. A process that may not be signalled runs, too. */
export function isRunning({ pid, startTicks }: ProcessIdentity): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EPERM") return false;
  }
  const now = startTicksOf(pid);
  return startTicks === null || now === null || startTicks === now;
}

/** Field 22 of /proc/<pid>/stat (proc(5)); the name in field 2 may hold blanks, so counting starts after its bracket. */
function startTicksOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
  } catch {
    return null;
  }
}
