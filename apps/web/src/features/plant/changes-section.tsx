import type { JSX } from "react";
import type { ChangeoverRules, Plant } from "@formweek/capacity-model";
import { Facts } from "../../components/facts.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";

export function ChangesSection({ plant }: { readonly plant: Plant }): JSX.Element {
  const { plant: text } = useText();
  const format = useFormat();
  const lines = new Map(plant.lines.map((line) => [line.id, line.name]));
  const priceNames = Object.keys(text.change.priceNames) as (keyof typeof text.change.priceNames)[];
  return (
    <div className="cards">
      {plant.changeoverRules.map((rules, at) => (
        <RulesCard
          key={rules.lineIds?.join() ?? `all ${at}`}
          rules={rules}
          title={
            rules.lineIds === null
              ? text.change.everyLine
              : text.change.onlyLines(rules.lineIds.map((id) => lines.get(id) ?? id).join(", "))
          }
        />
      ))}
      <section className="card">
        <h3>{text.change.prices}</h3>
        <Facts
          facts={priceNames.map((name) => ({
            name: text.change.priceNames[name],
            value: format.moneyFine(plant.prices[name]),
          }))}
        />
      </section>
    </div>
  );
}

function RulesCard({
  rules,
  title,
}: {
  readonly rules: ChangeoverRules;
  readonly title: string;
}): JSX.Element {
  const { plant: text, units } = useText();
  const format = useFormat();
  const number = (value: number): string => format.decimal(value, value % 1 === 0 ? 0 : 1);
  const tasks = Object.keys(text.change.tasks) as (keyof typeof text.change.tasks)[];
  return (
    <section className="card">
      <h3>{title}</h3>
      <table className="table table-small">
        <thead>
          <tr>
            <th scope="col">{text.change.mouldClass}</th>
            <th scope="col" className="number">
              {text.change.dismount}
            </th>
            <th scope="col" className="number">
              {text.change.mount}
            </th>
          </tr>
        </thead>
        <tbody>
          {rules.mouldClasses.map((mouldClass) => (
            <tr key={mouldClass.name}>
              <th scope="row">
                {mouldClass.name},{" "}
                {mouldClass.upToMassKg === null
                  ? text.change.beyond
                  : text.change.upTo(units.kg(format.count(mouldClass.upToMassKg)))}
              </th>
              <td className="number">{units.minutes(number(mouldClass.dismountMinutes))}</td>
              <td className="number">{units.minutes(number(mouldClass.mountMinutes))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Facts
        facts={[
          ...tasks.map((task) => ({
            name: text.change.tasks[task],
            value: units.minutes(number(rules[task])),
          })),
          { name: text.change.factor, value: number(rules.extruderColourFactor) },
          { name: text.change.scrapMould, value: number(rules.startUpScrapCyclesMould) },
          { name: text.change.scrapSheet, value: number(rules.startUpScrapCyclesSheet) },
        ]}
      />
    </section>
  );
}
