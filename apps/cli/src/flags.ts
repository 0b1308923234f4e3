import { parseArgs } from "node:util";
import { UsageError } from "./outcome.ts";

/** A flag of a command: whether it takes a value, and what it does, for the help. */
export interface FlagSpec {
  readonly value: string | null;
  readonly meaning: string;
}

export type FlagSpecs = Readonly<Record<string, FlagSpec>>;

/** Flags as given; a flag without a value is "" when it stands. */
export type Flags = ReadonlyMap<string, string>;

/** Reads the flags of a command; an unknown one, a missing value or a stray word is a usage error that names it. */
export function readFlags(args: readonly string[], specs: FlagSpecs): Flags {
  const options = Object.fromEntries(
    Object.entries(specs).map(([name, spec]) => [
      name,
      { type: spec.value === null ? ("boolean" as const) : ("string" as const) },
    ]),
  );
  try {
    const { values } = parseArgs({ args: [...args], options, strict: true, allowPositionals: false });
    return new Map(
      Object.entries(values).map(([name, value]) => [name, typeof value === "string" ? value : ""]),
    );
  } catch (error) {
    throw new UsageError(misreadText(error), "See --help for the options.");
  }
}

function misreadText(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const code = "code" in error ? error.code : null;
  const named = /'(.*?)[' =]/.exec(error.message)?.[1] ?? "";
  if (code === "ERR_PARSE_ARGS_UNKNOWN_OPTION") return `There is no option ${named}.`;
  if (code === "ERR_PARSE_ARGS_UNEXPECTED_POSITIONAL")
    return `"${named}" stands alone, with no option before it.`;
  if (!error.message.includes("missing") && !error.message.includes("ambiguous"))
    return `${named} takes no value.`;
  return `${named.replace(/,$/, "")} needs a value after it.`;
}

/** A whole number flag within a range; null when it does not stand. */
export function wholeFlag(
  flags: Flags,
  name: string,
  range: readonly [least: number, most: number],
): number | null {
  const text = flags.get(name);
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() !== "" && Number.isSafeInteger(value) && value >= range[0] && value <= range[1])
    return value;
  throw new UsageError(`--${name} is "${text}".`, `Give a whole number from ${range[0]} to ${range[1]}.`);
}

/** A number flag within a range; null when it does not stand. */
export function numberFlag(
  flags: Flags,
  name: string,
  range: readonly [least: number, most: number],
): number | null {
  const text = flags.get(name);
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() !== "" && Number.isFinite(value) && value >= range[0] && value <= range[1]) return value;
  throw new UsageError(`--${name} is "${text}".`, `Give a number from ${range[0]} to ${range[1]}.`);
}

/** A flag that must stand. */
export function neededFlag(flags: Flags, name: string, what: string): string {
  const text = flags.get(name);
  if (text === undefined || text === "")
    throw new UsageError(`--${name} is missing.`, `Add --${name} ${what}.`);
  return text;
}

/** The help of a command. */
export function helpOf(title: string, specs: FlagSpecs): string {
  const rows = Object.entries(specs).map(
    ([name, spec]) => [`--${name}${spec.value === null ? "" : ` ${spec.value}`}`, spec.meaning] as const,
  );
  const width = Math.max(...rows.map(([flag]) => flag.length));
  return [title, "", ...rows.map(([flag, meaning]) => `  ${flag.padEnd(width)}  ${meaning}`)].join("\n");
}
