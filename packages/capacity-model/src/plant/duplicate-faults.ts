import { examined, examinedIn, faultIn } from "./plant-fault.ts";
import type { PlantFault, RecordKind } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Records of one kind that share their id, and records that say the same thing twice. The later one is named. */
export function duplicateFaults(plant: Plant): readonly PlantFault[] {
  const byId: readonly (readonly [collection: string, kind: RecordKind, ids: readonly string[]])[] = [
    ["calendars", "calendar", plant.calendars.map(({ id }) => id)],
    ["lines", "line", plant.lines.map(({ id }) => id)],
    ["moulds", "mould", plant.moulds.map(({ id }) => id)],
    ["sheets", "sheet", plant.sheets.map(({ id }) => id)],
    ["products", "product", plant.products.map(({ id }) => id)],
    ["setterTeams", "setter team", plant.setterTeams.map(({ id }) => id)],
    ["trolleys", "trolley", plant.trolleys.map(({ id }) => id)],
    ["operatorPools", "operator pool", plant.operatorPools.map(({ id }) => id)],
  ];
  return [
    ...byId.flatMap(([collection, kind, ids]) =>
      repeatsIn(ids).map((index) =>
        faultIn(examinedIn(collection, kind, ids)[index] ?? examined([collection, index], kind, ""), {
          said: { kind: "duplicate id", of: kind, id: ids[index] ?? "" },
          field: ["id"],
          value: ids[index] ?? null,
          cause: `Another ${kind} has the number ${ids[index] ?? ""} too.`,
          remedy: `Give each ${kind} a number of its own, or delete one of the two.`,
        }),
      ),
    ),
    ...duplicatePolymers(plant),
    ...duplicateRates(plant),
    ...duplicateEntries(plant),
  ];
}

/** Places of texts that stood before in the list. */
export function repeatsIn(texts: readonly string[]): readonly number[] {
  const seen = new Set<string>();
  return texts.flatMap((text, index) => {
    if (seen.has(text)) return [index];
    seen.add(text);
    return [];
  });
}

function duplicatePolymers(plant: Plant): readonly PlantFault[] {
  const names = plant.polymers.map(({ name }) => name);
  return repeatsIn(names).map((index) =>
    faultIn(examined(["polymers", index], "polymer", names[index] ?? ""), {
      said: { kind: "duplicate polymer", name: names[index] ?? "" },
      field: ["name"],
      value: names[index] ?? null,
      cause: `The properties of ${names[index] ?? ""} are given twice.`,
      remedy: "Keep one set of properties per polymer.",
    }),
  );
}

function duplicateRates(plant: Plant): readonly PlantFault[] {
  const keys = plant.provenRates.map(({ lineId, mouldId, productId }) =>
    JSON.stringify([lineId, mouldId, productId]),
  );
  return repeatsIn(keys).map((index) => {
    const { lineId = "", mouldId = "", productId = "" } = plant.provenRates[index] ?? {};
    return faultIn(examined(["provenRates", index], "proven rate", String(index + 1)), {
      said: { kind: "duplicate rate", lineId, mouldId, productId },
      field: ["productId"],
      value: productId,
      cause: `A rate for product ${productId} with mould ${mouldId} on line ${lineId} stands there already.`,
      remedy: "Keep the one that the reports bear out.",
    });
  });
}

/** Lists inside one record that name the same thing twice. */
function duplicateEntries(plant: Plant): readonly PlantFault[] {
  const inMoulds = plant.moulds.flatMap((mould, index) =>
    repeatsIn(mould.inserts).map((place) =>
      faultIn(examined(["moulds", index], "mould", mould.id), {
        said: { kind: "duplicate insert", insertId: mould.inserts[place] ?? "" },
        field: ["inserts", place],
        value: mould.inserts[place] ?? null,
        cause: `Insert ${mould.inserts[place] ?? ""} is listed twice.`,
        remedy: "List each insert once.",
      }),
    ),
  );
  const inProducts = plant.products.flatMap((product, index) =>
    repeatsIn(product.moulds.map((choice) => JSON.stringify([choice.mouldId, choice.insertId]))).map(
      (place) =>
        faultIn(examined(["products", index], "product", product.id), {
          said: { kind: "duplicate mould", mouldId: product.moulds[place]?.mouldId ?? "" },
          field: ["moulds", place, "mouldId"],
          value: product.moulds[place]?.mouldId ?? null,
          cause: `Mould ${product.moulds[place]?.mouldId ?? ""} is listed twice with the same insert.`,
          remedy: "List each mould and insert once.",
        }),
    ),
  );
  return [...inMoulds, ...inProducts];
}
