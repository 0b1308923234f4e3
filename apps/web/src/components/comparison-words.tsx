import type { JSX } from "react";
import type { PlanComparison } from "@formweek/contracts";
import { useFormat } from "../format/use-format.ts";
import { useText } from "../text/text.ts";

const mostNamed = 6;

/** What is different between two plans in a few sentences: what moved, and which orders changed sides. */
export function ComparisonWords({ comparison }: { readonly comparison: PlanComparison }): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const { movedLots, changedFinishes, changedStates } = comparison;
  const otherLine = movedLots.filter(
    ({ from, to }) => from !== null && to !== null && from.lineId !== to.lineId,
  ).length;
  const named = (ids: readonly string[]): string => {
    const first = ids.slice(0, mostNamed).join(", ");
    return ids.length <= mostNamed ? first : text.andMore(first, format.count(ids.length - mostNamed));
  };
  const turned = (to: (typeof changedStates)[number]["to"], from?: string): readonly string[] =>
    changedStates
      .filter((state) => state.to === to && (from === undefined || state.from === from))
      .map(({ orderId }) => orderId);
  const sides = [
    [turned("unplanned"), text.leftOut],
    [turned("late"), text.newlyLate],
    [turned("on time", "late"), text.onTimeAgain],
  ] as const;
  return (
    <ul className="comparison-words">
      <li>
        {movedLots.length === 0
          ? text.nothingMoved
          : text.movedCount(format.count(movedLots.length), movedLots.length, format.count(otherLine))}
      </li>
      {changedFinishes.length > 0 && (
        <li>{text.finishCount(format.count(changedFinishes.length), changedFinishes.length)}</li>
      )}
      {sides.map(([ids, say]) =>
        ids.length === 0 ? null : <li key={say(named(ids))}>{say(named(ids))}</li>,
      )}
      {!comparison.sameInputs && <li className="hint">{text.otherInputs}</li>}
    </ul>
  );
}
