import type { JSX } from "react";
import type { PlanComparison } from "@formweek/contracts";
import type { Format } from "../format/format.ts";
import { useFormat } from "../format/use-format.ts";
import { useText } from "../text/text.ts";

type PlanSide = Pick<PlanComparison["from"], "summary" | "objective">;
type RowName = "late" | "tardiness" | "unplanned" | "changes" | "changeHours" | "teamHours" | "cost";

const rows: readonly {
  readonly name: RowName;
  readonly of: (side: PlanSide) => number;
  readonly say: (format: Format, value: number) => string;
}[] = [
  { name: "late", of: ({ summary }) => summary.late, say: (format, value) => format.count(value) },
  {
    name: "tardiness",
    of: ({ summary }) => summary.tardinessHours,
    say: (format, value) => format.decimal(value, 1),
  },
  { name: "unplanned", of: ({ summary }) => summary.unplanned, say: (format, value) => format.count(value) },
  { name: "changes", of: ({ summary }) => summary.changes, say: (format, value) => format.count(value) },
  {
    name: "changeHours",
    of: ({ summary }) => summary.changeHours,
    say: (format, value) => format.decimal(value, 1),
  },
  {
    name: "teamHours",
    of: ({ summary }) => summary.teamHours,
    say: (format, value) => format.decimal(value, 1),
  },
  { name: "cost", of: ({ objective }) => objective.total, say: (format, value) => format.money(value) },
];

interface PlanFiguresProps {
  readonly after: PlanSide;
  /** Null: there is nothing to compare with. */
  readonly before: PlanSide | null;
  /** Heads of the two columns. */
  readonly heads?: readonly [before: string, after: string];
}

/** The figures of a plan beside those of another, with the difference of each. In all of them less is better. */
export function PlanFigures({ before, after, heads }: PlanFiguresProps): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  return (
    <table className="table table-small plan-figures">
      <caption className="unseen">{text.figures}</caption>
      <thead>
        <tr>
          <th scope="col">{text.figure}</th>
          {before !== null && (
            <th scope="col" className="number">
              {heads?.[0] ?? text.before}
            </th>
          )}
          <th scope="col" className="number">
            {heads?.[1] ?? text.after}
          </th>
          {before !== null && (
            <th scope="col" className="number">
              {text.difference}
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, of, say }) => (
          <tr key={name}>
            <th scope="row">{text.rows[name]}</th>
            {before !== null && <td className="number">{say(format, of(before))}</td>}
            <td className="number">{say(format, of(after))}</td>
            {before !== null && (
              <Difference
                same={say(format, of(before)) === say(format, of(after))}
                by={of(after) - of(before)}
                say={(value) => say(format, value)}
              />
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface DifferenceProps {
  readonly same: boolean;
  readonly by: number;
  readonly say: (size: number) => string;
}

/** By how much something went up or down, with its sign; what went up is marked as worse. */
export function Difference({ same, by, say }: DifferenceProps): JSX.Element {
  const { versions: text } = useText();
  if (same) return <td className="number hint">{text.same}</td>;
  return (
    <td className={by > 0 ? "number worse" : "number better"}>
      {by > 0 ? text.more(say(by)) : text.less(say(-by))}
    </td>
  );
}
