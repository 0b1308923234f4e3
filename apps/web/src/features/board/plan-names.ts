import type { Plant } from "@formweek/capacity-model";
import type { MouldCopy } from "@formweek/contracts";
import type { Text } from "../../text/text.ts";

/** Names of what the plan refers to by id; the id itself where the plant does not know it (any more). */
export interface PlanNames {
  readonly mould: (copy: MouldCopy | null) => string;
  readonly team: (id: string) => string;
  readonly trolley: (id: string) => string;
}

export function planNames(plant: Plant | undefined, text: Text): PlanNames {
  const moulds = new Map(plant?.moulds.map((mould) => [mould.id as string, mould]));
  const teams = new Map(plant?.setterTeams.map((team) => [team.id as string, team.name]));
  const trolleys = new Map(plant?.trolleys.map((trolley) => [trolley.id as string, trolley.name]));
  return {
    mould: (copy) => {
      if (copy === null) return text.details.nothing;
      const known = moulds.get(copy.mouldId);
      const name = known?.name ?? copy.mouldId;
      return known === undefined || known.copies > 1 ? text.details.copy(name, `${copy.copy}`) : name;
    },
    team: (id) => teams.get(id) ?? id,
    trolley: (id) => trolleys.get(id) ?? id,
  };
}
