import type { Plant } from "@formweek/capacity-model";
import { useId, type JSX } from "react";
import { useFormat } from "../format/use-format.ts";
import { spellsOf, type BoardPlan, type BoardSpell } from "../kernels/board-plan.ts";
import { useText } from "../text/text.ts";
import { poolsOf, teamsOf, worksAt, type ShiftDraft } from "../kernels/shift-draft.ts";

interface ShiftPeopleProps {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly draft: ShiftDraft;
  readonly spell: BoardSpell;
  readonly onChange: (part: Partial<ShiftDraft>) => void;
}

/** Who comes to an added shift: setter teams, and operators besides those who are there. */
export function ShiftPeople({ plan, plant, draft, spell, onChange }: ShiftPeopleProps): JSX.Element {
  const { hours: text } = useText();
  const format = useFormat();
  const id = useId();
  const teamIds = teamsOf({ plan, plant }, draft, spell);
  const hours = new Map(plan.document.teams.map((team) => [team.id, spellsOf(team.open)]));
  const pools = poolsOf(plant, draft);
  return (
    <fieldset className="hours-choice">
      <legend>{text.people}</legend>
      {plant.setterTeams.map((team) => (
        <label key={team.id}>
          <input
            type="checkbox"
            checked={teamIds.includes(team.id)}
            onChange={(event) =>
              onChange({
                teamIds: event.target.checked
                  ? [...teamIds, team.id]
                  : teamIds.filter((each) => each !== team.id),
              })
            }
          />{" "}
          {worksAt(hours.get(team.id) ?? [], spell) ? text.teamThere(team.name) : team.name}
        </label>
      ))}
      {pools.map((pool) => (
        <label key={pool.id} htmlFor={`${id}-${pool.id}`}>
          <input
            id={`${id}-${pool.id}`}
            className="select hours-heads"
            type="number"
            min={0}
            max={500}
            step={0.05}
            value={draft.heads.get(pool.id) ?? String(pool.needed)}
            onChange={(event) => onChange({ heads: new Map(draft.heads).set(pool.id, event.target.value) })}
          />{" "}
          {text.headsMore(pool.name, format.decimal(pool.needed, pool.needed % 1 === 0 ? 0 : 2))}
        </label>
      ))}
    </fieldset>
  );
}
