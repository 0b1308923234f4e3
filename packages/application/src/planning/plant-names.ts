import type { Assembled } from "./assembled.ts";

/** Names that people know things by; an id that is not known stands for itself. */
export interface PlantNames {
  readonly line: (id: string) => string;
  readonly setup: (id: string) => string;
  readonly mould: (id: string) => string;
  readonly sheet: (id: string) => string;
  readonly team: (id: string) => string;
}

function nameIn(records: readonly { readonly id: string; readonly name: string }[]): (id: string) => string {
  const names = new Map(records.map((record) => [record.id, record.name]));
  return (id) => names.get(id) ?? id;
}

/** Names of the plant's records; a set-up is named by its mould and sheet. */
export function plantNames({ plant, problem }: Assembled): PlantNames {
  const mould = nameIn(plant.moulds);
  const sheet = nameIn(plant.sheets);
  const setups = new Map(problem.setups.map((setup) => [setup.id, setup]));
  return {
    line: nameIn(plant.lines),
    mould,
    sheet,
    team: nameIn(plant.setterTeams),
    setup: (id) => {
      const setup = setups.get(id);
      const parts = [
        setup?.mouldId === null || setup === undefined ? null : mould(setup.mouldId),
        setup?.sheetId === null || setup === undefined ? null : sheet(setup.sheetId),
      ].filter((part) => part !== null);
      return parts.length === 0 ? "no mould" : parts.join(", ");
    },
  };
}
