import type { JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import { Facts } from "../../components/facts.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

export function CrewsSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const calendars = new Map(plant.calendars.map((calendar) => [calendar.id, calendar.name]));
  const calendarName = (id: Plant["calendars"][number]["id"]): string => calendars.get(id) ?? id;
  return (
    <div className="cards">
      <section className="card">
        <h3>{text.crew.teams}</h3>
        {plant.setterTeams.length === 0 ? (
          <p>{text.crew.noTeams}</p>
        ) : (
          <Facts
            facts={plant.setterTeams.map((team) => ({
              name: team.name,
              value: `${text.crew.setters} ${team.setters} · ${calendarName(team.calendarId)}`,
            }))}
          />
        )}
      </section>
      <section className="card">
        <h3>{text.crew.trolleys}</h3>
        {plant.trolleys.length === 0 ? (
          <p>{text.none}</p>
        ) : (
          <Facts
            facts={plant.trolleys.map((trolley) => ({
              name: trolley.name,
              value: linesBy(plant, (line) => line.trolleyId === trolley.id),
            }))}
          />
        )}
      </section>
      {plant.operatorPools.map((pool) => (
        <section key={pool.id} className="card">
          <h3>{pool.name}</h3>
          <Facts
            facts={[
              ...pool.crews.map((crew) => ({
                name: calendarName(crew.calendarId),
                value: units.perHead(format.decimal(crew.heads, crew.heads % 1 === 0 ? 0 : 1)),
              })),
              { name: text.crew.lines, value: linesBy(plant, (line) => line.operatorPoolId === pool.id) },
            ]}
          />
        </section>
      ))}
    </div>
  );
}

function linesBy(plant: Plant, isUser: (line: Plant["lines"][number]) => boolean): string {
  return plant.lines
    .filter(isUser)
    .map((line) => line.name)
    .join(", ");
}
