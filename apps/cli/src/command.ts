import type { OfflinePorts } from "@formweek/composition";
import type { Flags, FlagSpecs } from "./flags.ts";
import type { ExitCode, Output } from "./outcome.ts";

/** What a command works with. */
export interface CommandContext {
  readonly flags: Flags;
  readonly ports: OfflinePorts;
  readonly output: Output;
  /** From the call on, Ctrl-C aborts the signal instead of ending the process: what is in the making is kept. */
  readonly stopSignal: () => AbortSignal;
}

export interface Command {
  readonly title: string;
  readonly flags: FlagSpecs;
  readonly run: (context: CommandContext) => Promise<ExitCode>;
}
