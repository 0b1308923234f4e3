import { examinedIn, faultIn } from "./plant-fault.ts";
import type { PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Records of one kind that share their id, and records that say the same thing twice. The later one is named. */
export function duplicateFaults(plant: Plant): readonly PlantFault[] {
  const byId: readonly (readonly [collection: string, kind: string, ids: readonly string[]])[] = [
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
        faultIn(examinedIn(collection, kind, ids)[index] ?? { path: [collection, index], record: kind }, {
          code: "duplicate-id",
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
    faultIn(
      { path: ["polymers", index], record: `polymer ${names[index] ?? ""}` },
      {
        code: "duplicate-record",
        field: ["name"],
        value: names[index] ?? null,
        cause: `The properties of ${names[index] ?? ""} are given twice.`,
        remedy: "Keep one set of properties per polymer.",
      },
    ),
  );
}

function duplicateRates(plant: Plant): readonly PlantFault[] {
  const keys = plant.provenRates.map(({ lineId, mouldId, productId }) =>
    JSON.stringify([lineId, mouldId, productId]),
  );
  return repeatsIn(keys).map((index) => {
    const rate = plant.provenRates[index];
    return faultIn(
      { path: ["provenRates", index], record: `proven rate ${index + 1}` },
      {
        code: "duplicate-record",
        field: ["productId"],
        value: rate?.productId ?? null,
        cause: `A rate for product ${rate?.productId ?? ""} with mould ${rate?.mouldId ?? ""} on line ${rate?.lineId ?? ""} stands there already.`,
        remedy: "Keep the one that the reports bear out.",
      },
    );
  });
}

/** Lists inside one record that name the same thing twice. */
function duplicateEntries(plant: Plant): readonly PlantFault[] {
  const inMoulds = plant.moulds.flatMap((mould, index) =>
    repeatsIn(mould.inserts).map((place) =>
      faultIn(
        { path: ["moulds", index], record: `mould ${mould.id}` },
        {
          code: "duplicate-entry",
          field: ["inserts", place],
          value: mould.inserts[place] ?? null,
          cause: `Insert ${mould.inserts[place] ?? ""} is listed twice.`,
          remedy: "List each insert once.",
        },
      ),
    ),
  );
  const inProducts = plant.products.flatMap((product, index) =>
    repeatsIn(product.moulds.map((choice) => JSON.stringify([choice.mouldId, choice.insertId]))).map(
      (place) =>
        faultIn(
          { path: ["products", index], record: `product ${product.id}` },
          {
            code: "duplicate-entry",
            field: ["moulds", place, "mouldId"],
            value: product.moulds[place]?.mouldId ?? null,
            cause: `Mould ${product.moulds[place]?.mouldId ?? ""} is listed twice with the same insert.`,
            remedy: "List each mould and insert once.",
          },
        ),
    ),
  );
  return [...inMoulds, ...inProducts];
}
