import type { JSX } from "react";
import { Facts } from "../../components/facts.tsx";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan, BoardSegment } from "../../kernels/board-plan.ts";
import { gapsBetween } from "../../kernels/culling.ts";
import { useText, type Text } from "../../text/text.ts";

interface GapDetailsProps {
  readonly plan: BoardPlan;
  readonly gap: { readonly lineIndex: number; readonly start: number; readonly end: number };
}

/** Time in which a line has nothing planned: between what, and how much of it is working time. */
export function GapDetails({ plan, gap }: GapDetailsProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const { details } = text;
  const line = plan.lines[gap.lineIndex];
  if (line === undefined) return null;
  const closed = gapsBetween(line.open, gap.start, gap.end).reduce(
    (sum, spell) => sum + spell.end - spell.start,
    0,
  );
  const length = gap.end - gap.start;
  const before = line.segments.findLast((segment) => segment.end <= gap.start);
  const after = line.segments.find((segment) => segment.start >= gap.end);
  const reasons = line.closures.filter((closure) => closure.start < gap.end && closure.end > gap.start);
  return (
    <>
      <h2>
        {details.gap} · {format.span(length)}
      </h2>
      <p className="details-lead">{line.name}</p>
      <Facts
        facts={[
          { name: details.start, value: format.instant(gap.start) },
          { name: details.end, value: format.instant(gap.end) },
          { name: details.openWithin, value: format.span(length - closed) },
          { name: details.closedWithin, value: format.span(closed) },
          { name: details.before, value: nameOf(before, text) ?? details.nothingBefore },
          { name: details.after, value: nameOf(after, text) ?? details.nothingAfter },
        ]}
      />
      {closed >= length && <p className="hint">{details.allClosed}</p>}
      {reasons.length > 0 && (
        <ul className="reasons">
          {reasons.map((closure) => (
            <li key={closure.start}>
              {closure.reason}:{" "}
              {text.plant.calendar.fromTo(format.instant(closure.start), format.instant(closure.end))}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function nameOf(segment: BoardSegment | undefined, text: Text): string | null {
  if (segment === undefined) return null;
  if (segment.source.kind === "change") return text.details.change;
  return text.details.order(segment.source.orderId);
}
