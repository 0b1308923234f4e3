import type { FieldFault } from "@formweek/contracts";

/** What is wrong with a scenario as it was sent, by where it stands in the form. */
export interface ScenarioFaults {
  /** By the change's place in the list, then by its field; an empty field is the change as a whole. */
  readonly changes: ReadonlyMap<number, ReadonlyMap<string, string>>;
  /** Of the name. */
  readonly name: string | null;
  /** Of nothing that stands in the form. */
  readonly others: readonly string[];
}

/** Sorts what the server found by the fields of the form; of a field the first counts. */
export function scenarioFaults(
  faults: readonly Pick<FieldFault, "path" | "problem" | "remedy">[],
): ScenarioFaults {
  const changes = new Map<number, Map<string, string>>();
  const others: string[] = [];
  let name: string | null = null;
  for (const { path, problem, remedy } of faults) {
    const words = `${problem} ${remedy}`.trim();
    const [, place, rest = ""] = /(?:^|\.)changes\.(\d+)(?:\.(.*))?$/.exec(path) ?? [];
    if (place !== undefined) {
      const fields = changes.get(Number(place)) ?? new Map<string, string>();
      const field = fieldOf(rest);
      if (!fields.has(field)) fields.set(field, words);
      changes.set(Number(place), fields);
    } else if (/(?:^|\.)name$/.test(path)) name ??= words;
    else others.push(path === "" ? words : `${path}: ${words}`);
  }
  return { changes, name, others };
}

/** "shift.lineIds.2" stands at "lineIds". */
function fieldOf(path: string): string {
  return (
    path
      .split(".")
      .filter((part) => !/^\d+$/.test(part))
      .at(-1) ?? ""
  );
}
