import { offlinePorts } from "@formweek/composition";
import { auditCommand } from "./audit-command.ts";
import type { Command } from "./command.ts";
import { generateCommand } from "./generate-command.ts";
import { helpOf, readFlags } from "./flags.ts";
import { UsageError } from "./outcome.ts";
import type { ExitCode, Output } from "./outcome.ts";
import { planCommand } from "./plan-command.ts";
import { promiseCommand } from "./promise-command.ts";
import { rateCommand } from "./rate-command.ts";
import { stopSignal } from "./stop-signal.ts";

const COMMANDS: Readonly<Record<string, Command>> = {
  plan: planCommand,
  audit: auditCommand,
  generate: generateCommand,
  rate: rateCommand,
  promise: promiseCommand,
};

const output: Output = {
  say: (line) => void process.stdout.write(`${line}\n`),
  warn: (line) => void process.stderr.write(`${line}\n`),
  progress: (line) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\u001b[2K${line}`);
  },
};

async function main([name, ...args]: readonly string[]): Promise<ExitCode> {
  const command = COMMANDS[name ?? ""];
  if (command === undefined) {
    const titles = Object.values(COMMANDS)
      .map(({ title }) => title)
      .join("\n\n");
    output.warn(
      name === undefined || name === "--help" ? titles : `There is no command "${name}".\n\n${titles}`,
    );
    return name === "--help" ? 0 : 2;
  }
  if (args.includes("--help")) {
    output.say(helpOf(command.title, command.flags));
    return 0;
  }
  const flags = readFlags(args, command.flags);
  return command.run({ flags, ports: offlinePorts(), output, stopSignal });
}

// a reader that has seen enough, such as a pager, or a terminal that was closed is no fault
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE" && error.code !== "EIO") throw error;
  });
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    if (error instanceof UsageError) output.warn(`${error.message} ${error.remedy}`);
    else output.warn(error instanceof Error ? (error.stack ?? error.message) : String(error));
    process.exitCode = 2;
  },
);
