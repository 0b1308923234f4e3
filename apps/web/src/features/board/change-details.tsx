import type { JSX } from "react";
import type { ChangeSegment } from "@formweek/contracts";
import { Cautions } from "../../components/cautions.tsx";
import { Facts, type Fact } from "../../components/facts.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan, BoardSegment } from "../../kernels/board-plan.ts";
import { useText, type Text } from "../../text/text.ts";
import { GapBeside } from "./gap-beside.tsx";
import type { PlanNames } from "../../format/plan-names.ts";

interface ChangeDetailsProps {
  readonly plan: BoardPlan;
  readonly segment: BoardSegment;
  readonly change: ChangeSegment;
  readonly names: PlanNames;
}

export function ChangeDetails({ plan, segment, change, names }: ChangeDetailsProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { details } = text;
  const line = plan.lines[segment.lineIndex];
  return (
    <>
      <h2>
        {change.stripping ? details.stripping : details.change} · {format.span(segment.end - segment.start)}
      </h2>
      <p className="details-lead">
        {line?.name}, {format.instant(segment.start)}
      </p>
      <Facts facts={changeFacts(segment, change, { names, text, format })} />
      <GapBeside plan={plan} segment={segment} />
      {change.tasks.length > 0 && (
        <>
          <h3>{details.tasks}</h3>
          <table className="table table-small">
            <thead>
              <tr>
                <th scope="col">{details.task}</th>
                <th scope="col" className="number">
                  {details.minutes}
                </th>
                <th scope="col">{details.by}</th>
              </tr>
            </thead>
            <tbody>
              {change.tasks.map((task) => (
                <tr key={task.name}>
                  <th scope="row">{text.causes.task(task)}</th>
                  <td className="number">{format.decimal(task.minutes, task.minutes % 1 === 0 ? 0 : 1)}</td>
                  <td>{task.byTeam ? details.byTeam : details.byLine}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="hint">{details.longestPath}</p>
        </>
      )}
      <Cautions />
    </>
  );
}

interface Words {
  readonly names: PlanNames;
  readonly text: Text;
  readonly format: Format;
}

function changeFacts(
  segment: BoardSegment,
  change: ChangeSegment,
  { names, text, format }: Words,
): readonly Fact[] {
  const { details } = text;
  return [
    { name: details.out, value: names.mould(change.mouldOut) },
    { name: details.in, value: names.mould(change.mouldIn) },
    { name: details.start, value: format.instant(segment.start) },
    { name: details.end, value: format.instant(segment.end) },
    { name: details.team, value: change.teamId === null ? details.noTeam : names.team(change.teamId) },
    ...(change.trolleyId === null ? [] : [{ name: details.trolley, value: names.trolley(change.trolleyId) }]),
    { name: details.scrap, value: text.units.kg(format.decimal(change.scrapKg, 1)) },
  ];
}
