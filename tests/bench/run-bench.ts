import { parseArgs } from "node:util";

/** What a bench is asked for on the command line, by the option's name; each has a value. */
export type BenchOptions<Name extends string> = { readonly [Option in Name]?: string };

function optionsOf<Name extends string>(usage: string, names: readonly Name[]): BenchOptions<Name> | null {
  const wanted = Object.fromEntries(names.map((name) => [name, { type: "string" as const }]));
  try {
    const { values } = parseArgs({ options: { ...wanted, help: { type: "boolean" } } });
    return values.help === true ? null : (values as BenchOptions<Name>);
  } catch (error) {
    throw new Error(`${error instanceof Error ? error.message : "Options that cannot be read."}\n${usage}`, {
      cause: error,
    });
  }
}

/** Runs a bench with its options; `--help` prints the usage instead. What goes wrong is said in one text, and the exit code is 1. */
export async function runBench<Name extends string>(
  usage: string,
  names: readonly Name[],
  bench: (options: BenchOptions<Name>) => Promise<void> | void,
): Promise<void> {
  try {
    const options = optionsOf(usage, names);
    if (options === null) console.log(usage);
    else await bench(options);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
