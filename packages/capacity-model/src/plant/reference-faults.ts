import type { AddedShift } from "./added-shift.ts";
import { examined, faultIn } from "./plant-fault.ts";
import type { Examined, PlantFault, RecordKind } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** Kinds of records that others point to. */
type Target = Extract<
  RecordKind,
  | "calendar"
  | "line"
  | "mould"
  | "sheet"
  | "product"
  | "trolley"
  | "operator pool"
  | "setter team"
  | "polymer"
>;

interface Reference {
  readonly from: Examined;
  readonly field: readonly (string | number)[];
  readonly target: Target;
  readonly value: string | null;
}

/** Every reference that leads nowhere. Null points to nothing and is no fault. */
export function referenceFaults(plant: Plant): readonly PlantFault[] {
  const known: Record<Target, ReadonlySet<string>> = {
    calendar: new Set(plant.calendars.map(({ id }) => id)),
    line: new Set(plant.lines.map(({ id }) => id)),
    mould: new Set(plant.moulds.map(({ id }) => id)),
    sheet: new Set(plant.sheets.map(({ id }) => id)),
    product: new Set(plant.products.map(({ id }) => id)),
    trolley: new Set(plant.trolleys.map(({ id }) => id)),
    "operator pool": new Set(plant.operatorPools.map(({ id }) => id)),
    "setter team": new Set(plant.setterTeams.map(({ id }) => id)),
    polymer: new Set(plant.polymers.map(({ name }) => name)),
  };
  const dangling = referencesOf(plant).flatMap(({ from, field, target, value }) =>
    value === null || known[target].has(value)
      ? []
      : [
          faultIn(from, {
            said: { kind: "unknown reference", to: target, id: value },
            field,
            value,
            cause: `There is no ${target} ${value} in this plant.`,
            remedy: `Correct the number, or add the ${target} first.`,
          }),
        ],
  );
  return [...dangling, ...insertFaults(plant)];
}

function referencesOf(plant: Plant): readonly Reference[] {
  return [
    ...plant.lines.flatMap((line, index) => {
      const from = examined(["lines", index], "line", line.id);
      const { mouldId, sheetId, productId } = line.mounted;
      return [
        { from, field: ["calendarId"], target: "calendar", value: line.calendarId },
        { from, field: ["trolleyId"], target: "trolley", value: line.trolleyId },
        { from, field: ["operatorPoolId"], target: "operator pool", value: line.operatorPoolId },
        ...line.polymers.map((name, place): Reference => ({
          from,
          field: ["polymers", place],
          target: "polymer",
          value: name,
        })),
        { from, field: ["mounted", "mouldId"], target: "mould", value: mouldId },
        { from, field: ["mounted", "sheetId"], target: "sheet", value: sheetId },
        { from, field: ["mounted", "productId"], target: "product", value: productId },
      ] satisfies readonly Reference[];
    }),
    ...plant.lineClosures.map((closure, index): Reference => {
      const from = examined(["lineClosures", index], "closure of line", closure.lineId);
      return { from, field: ["lineId"], target: "line", value: closure.lineId };
    }),
    ...plant.moulds.flatMap((mould, index) => {
      const from = examined(["moulds", index], "mould", mould.id);
      return (mould.approvedLineIds ?? []).map((lineId, place): Reference => ({
        from,
        field: ["approvedLineIds", place],
        target: "line",
        value: lineId,
      }));
    }),
    ...plant.sheets.map((sheet, index): Reference => {
      const from = examined(["sheets", index], "sheet", sheet.id);
      return { from, field: ["polymer"], target: "polymer", value: sheet.polymer };
    }),
    ...plant.products.flatMap((product, index) => {
      const from = examined(["products", index], "product", product.id);
      return [
        { from, field: ["sheetId"], target: "sheet", value: product.sheetId },
        ...product.moulds.map(({ mouldId }, place): Reference => ({
          from,
          field: ["moulds", place, "mouldId"],
          target: "mould",
          value: mouldId,
        })),
      ] satisfies readonly Reference[];
    }),
    ...plant.provenRates.flatMap((rate, index) => {
      const from = examined(["provenRates", index], "proven rate", String(index + 1));
      return [
        { from, field: ["lineId"], target: "line", value: rate.lineId },
        { from, field: ["mouldId"], target: "mould", value: rate.mouldId },
        { from, field: ["productId"], target: "product", value: rate.productId },
      ] satisfies readonly Reference[];
    }),
    ...crewReferences(plant),
    ...plant.addedShifts.flatMap(addedShiftReferences),
  ];
}

function addedShiftReferences(shift: AddedShift, index: number): readonly Reference[] {
  const from = examined(["addedShifts", index], "added shift", `${shift.name}, ${shift.date}`);
  return [
    ...shift.lineIds.map((value, place): Reference => ({
      from,
      field: ["lineIds", place],
      target: "line",
      value,
    })),
    ...shift.teamIds.map((value, place): Reference => ({
      from,
      field: ["teamIds", place],
      target: "setter team",
      value,
    })),
    ...shift.operators.map(({ poolId }, place): Reference => ({
      from,
      field: ["operators", place, "poolId"],
      target: "operator pool",
      value: poolId,
    })),
  ];
}

function crewReferences(plant: Plant): readonly Reference[] {
  return [
    ...plant.setterTeams.map((team, index): Reference => {
      const from = examined(["setterTeams", index], "setter team", team.id);
      return { from, field: ["calendarId"], target: "calendar", value: team.calendarId };
    }),
    ...plant.operatorPools.flatMap((pool, index) => {
      const from = examined(["operatorPools", index], "operator pool", pool.id);
      return pool.crews.map((crew, place): Reference => ({
        from,
        field: ["crews", place, "calendarId"],
        target: "calendar",
        value: crew.calendarId,
      }));
    }),
    ...plant.changeoverRules.flatMap((rules, index) => {
      const from = examined(["changeoverRules", index], "changeover rules", String(index + 1));
      return (rules.lineIds ?? []).map((lineId, place): Reference => ({
        from,
        field: ["lineIds", place],
        target: "line",
        value: lineId,
      }));
    }),
  ];
}

/** Inserts are known within their mould only. An unknown mould is a fault of its own. */
function insertFaults(plant: Plant): readonly PlantFault[] {
  const insertsOf = new Map(plant.moulds.map((mould) => [mould.id, mould.inserts]));
  const products = plant.products.flatMap((product, index) =>
    product.moulds.map(({ mouldId, insertId }, place) => ({
      from: examined(["products", index], "product", product.id),
      field: ["moulds", place, "insertId"],
      mouldId,
      insertId,
    })),
  );
  const mounted = plant.lines.map((line, index) => ({
    from: examined(["lines", index], "line", line.id),
    field: ["mounted", "insertId"],
    mouldId: line.mounted.mouldId,
    insertId: line.mounted.insertId,
  }));
  return [...products, ...mounted].flatMap(({ from, field, mouldId, insertId }) => {
    const inserts = mouldId === null ? undefined : insertsOf.get(mouldId);
    if (mouldId === null || insertId === null || inserts === undefined || inserts.includes(insertId))
      return [];
    return [
      faultIn(from, {
        said: { kind: "unknown insert", mouldId, insertId },
        field,
        value: insertId,
        cause: `Mould ${mouldId} has no insert ${insertId}.`,
        remedy: "Correct the number, or add the insert first.",
      }),
    ];
  });
}
