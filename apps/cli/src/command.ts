import type { OfflinePorts } from "@formweek/composition";
import type { Flags, FlagSpecs } from "./flags.ts";
import type { ExitCode, Output } from "./outcome.ts";

/** What a command works with. */
export interface CommandContext {
  readonly flags: Flags;
  readonly ports: OfflinePorts;
  readonly output: Output;
  /** Aborted by Ctrl-C; a plan in the making is then kept as it is. */
  readonly signal: AbortSignal;
}

export interface Command {
  readonly title: string;
  readonly flags: FlagSpecs;
  readonly run: (context: CommandContext) => Promise<ExitCode>;
}
