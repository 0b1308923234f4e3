import type { ChangeoverRules } from "./changeover-rules.ts";
import { examined, faultIn } from "./plant-fault.ts";
import type { Examined, Finding, PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Tables that must be sorted, and sets of changeover rules that do not settle each line exactly once. */
export function rulesFaults(plant: Plant): readonly PlantFault[] {
  return [
    ...plant.changeoverRules.flatMap((rules, index) => mouldClassFaults(rules, examinedSet(index))),
    ...setFaults(plant),
    ...plant.lines.flatMap((line, index) => {
      if (line.openTime.kind !== "table") return [];
      const { rows } = line.openTime;
      return unsortedPlaces(rows.map(({ depthMm }) => depthMm)).map((place) =>
        faultIn(examined(["lines", index], "line", line.id), {
          said: { kind: "wrong table order", depthMm: rows[place]?.depthMm ?? 0 },
          field: ["openTime", "rows", place, "depthMm"],
          value: rows[place]?.depthMm ?? null,
          cause: `Depth ${rows[place]?.depthMm ?? ""} mm does not exceed the row before it.`,
          remedy: "Sort the handling table by depth and give each depth once.",
        }),
      );
    }),
  ];
}

function examinedSet(index: number): Examined {
  return examined(["changeoverRules", index], "changeover rules", String(index + 1));
}

function unsortedPlaces(values: readonly number[]): readonly number[] {
  return values.flatMap((value, place) => {
    const before = values[place - 1];
    return before !== undefined && value <= before ? [place] : [];
  });
}

/** Bounds ascend; the last class, and it alone, is open-ended. */
function mouldClassFaults(rules: ChangeoverRules, from: Examined): readonly PlantFault[] {
  const bounds = rules.mouldClasses.map(({ upToMassKg }) => upToMassKg);
  const last = bounds.length - 1;
  return bounds.flatMap((bound, place) => {
    const before = bounds[place - 1];
    const found: Pick<Finding, "said" | "cause"> | null =
      place === last && bound !== null
        ? {
            said: { kind: "last mould class bounded", massKg: bound },
            cause: `Moulds above ${bound} kg belong to no class.`,
          }
        : place < last && bound === null
          ? {
              said: { kind: "mould class unbounded" },
              cause: "This class has no bound, so the classes after it are never used.",
            }
          : bound !== null && before !== undefined && before !== null && bound <= before
            ? {
                said: { kind: "wrong mould class order", massKg: bound },
                cause: `${bound} kg does not exceed the class before it.`,
              }
            : null;
    if (found === null) return [];
    return [
      faultIn(from, {
        ...found,
        field: ["mouldClasses", place, "upToMassKg"],
        value: bound,
        remedy: "Sort the classes by mass and leave the bound of the last one, and only of it, empty.",
      }),
    ];
  });
}

function setFaults(plant: Plant): readonly PlantFault[] {
  const faults: PlantFault[] = [];
  const named = new Map<string, number>();
  let general: number | null = null;
  plant.changeoverRules.forEach((rules, index) => {
    if (rules.lineIds === null) {
      if (general !== null)
        faults.push(twiceFault(index, ["lineIds"], { lineId: null, otherSet: general + 1 }));
      general ??= index;
      return;
    }
    rules.lineIds.forEach((lineId, place) => {
      const other = named.get(lineId);
      if (other === undefined) named.set(lineId, index);
      else faults.push(twiceFault(index, ["lineIds", place], { lineId, otherSet: other + 1 }));
    });
  });
  if (general === null) {
    plant.lines.forEach((line, index) => {
      if (named.has(line.id)) return;
      faults.push(
        faultIn(examined(["lines", index], "line", line.id), {
          said: { kind: "no changeover rules", lineId: line.id },
          field: ["id"],
          value: line.id,
          cause: `No set of changeover rules holds for line ${line.id}.`,
          remedy:
            "Name the line in a set, or leave the lines of one set empty so that it holds for every line.",
        }),
      );
    });
  }
  return faults;
}

function twiceFault(
  index: number,
  field: readonly (string | number)[],
  { lineId, otherSet }: { readonly lineId: string | null; readonly otherSet: number },
): PlantFault {
  return faultIn(examinedSet(index), {
    said: { kind: "two changeover sets", lineId, otherSet },
    field,
    value: lineId,
    cause:
      lineId === null
        ? `Set ${otherSet} holds for every line already.`
        : `Line ${lineId} is named by set ${otherSet} already.`,
    remedy: "Let one set hold for each line.",
  });
}
