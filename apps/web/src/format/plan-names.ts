import type { Mould, Plant } from "@formweek/capacity-model";
import type { MouldCopy } from "@formweek/contracts";
import type { Naming } from "../text/naming.ts";
import type { Text } from "../text/text.ts";
import type { Format } from "./format.ts";

/** Names of what the plan refers to by id; the id itself where the plant does not know it (any more). */
export interface PlanNames {
  readonly mould: (copy: MouldCopy | null) => string;
  /** The mould without its copy. */
  readonly mouldAlone: (mouldId: string) => string;
  /** Which copy it is; null where the mould has no other. */
  readonly copyNumber: (copy: MouldCopy) => string | null;
  readonly line: (id: string) => string;
  readonly sheet: (id: string) => string;
  readonly team: (id: string) => string;
  readonly trolley: (id: string) => string;
}

export function planNames(plant: Plant | undefined, text: Text): PlanNames {
  const moulds = new Map<string, Mould>(plant?.moulds.map((mould) => [mould.id, mould]));
  const lines = new Map<string, string>(plant?.lines.map((line) => [line.id, line.name]));
  const sheets = new Map<string, string>(plant?.sheets.map((sheet) => [sheet.id, sheet.name]));
  const teams = new Map<string, string>(plant?.setterTeams.map((team) => [team.id, team.name]));
  const trolleys = new Map<string, string>(plant?.trolleys.map((trolley) => [trolley.id, trolley.name]));
  const mouldAlone = (mouldId: string): string => moulds.get(mouldId)?.name ?? mouldId;
  const copyNumber = ({ mouldId, copy }: MouldCopy): string | null => {
    const known = moulds.get(mouldId);
    return known === undefined || known.copies > 1 ? `${copy}` : null;
  };
  return {
    mould: (copy) => {
      if (copy === null) return text.details.nothing;
      const name = mouldAlone(copy.mouldId);
      const number = copyNumber(copy);
      return number === null ? name : text.details.copy(name, number);
    },
    mouldAlone,
    copyNumber,
    line: (id) => lines.get(id) ?? id,
    sheet: (id) => sheets.get(id) ?? id,
    team: (id) => teams.get(id) ?? id,
    trolley: (id) => trolleys.get(id) ?? id,
  };
}

/** Names and figures for what the server reports by id and in seconds. */
export function namingFor(
  { line, mouldAlone, sheet, team }: PlanNames,
  { instant, span, figure }: Format,
): Naming {
  const moment = (iso: string): string => instant(Date.parse(iso) / 1000);
  return { line, mould: mouldAlone, sheet, team, moment, span, figure };
}
