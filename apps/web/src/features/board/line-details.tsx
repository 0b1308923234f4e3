import type { Plant } from "@formweek/capacity-model";
import { useEffect, useRef, type JSX } from "react";
import { Facts } from "../../components/facts.tsx";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { LineHours } from "./line-hours.tsx";

interface LineDetailsProps {
  readonly plan: BoardPlan;
  readonly lineId: string;
  /** Undefined until the server has told. */
  readonly plant: Plant | undefined;
}

/** A line over the plan: how much of its time is used, and its hours, which can be changed here. */
export function LineDetails({ plan, lineId, plant }: LineDetailsProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const heading = useRef<HTMLHeadingElement>(null);
  // chosen by a key or a click on the board: from here the keyboard reaches the buttons
  useEffect(() => heading.current?.focus(), []);
  const line = plan.lines.find(({ id }) => id === lineId);
  if (line === undefined) return null;
  const { runSeconds, changeSeconds, stopSeconds, idleSeconds, closedSeconds } = line.source.utilisation;
  return (
    <>
      <h2 ref={heading} tabIndex={-1}>
        {line.name}
      </h2>
      <p className="details-lead">{text.board.used(format.percent(line.usedShare))}</p>
      <Facts
        facts={[
          { name: text.hours.runs, value: format.hours(runSeconds) },
          { name: text.hours.changes, value: format.hours(changeSeconds) },
          { name: text.hours.stands, value: format.hours(stopSeconds + idleSeconds) },
          { name: text.hours.closed, value: format.hours(closedSeconds) },
        ]}
      />
      {plant !== undefined && <LineHours plan={plan} plant={plant} lineId={lineId} within={null} />}
    </>
  );
}
