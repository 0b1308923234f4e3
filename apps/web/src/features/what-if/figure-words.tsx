import type { JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import type { FigureName } from "../../kernels/scenario-rows.ts";
import { useText } from "../../text/text.ts";

/** A figure of a plan as it is read. */
export function sayFigure(name: FigureName, value: number, format: Format): string {
  switch (name) {
    case "lateOrders":
    case "unplannedOrders":
      return format.count(value);
    case "lateSeconds":
    case "changeSeconds":
    case "overtimeSeconds":
      return format.hours(value);
    case "cost":
      return format.money(value);
  }
}

interface FigureDifferenceProps {
  readonly name: FigureName;
  /** More than the other; less than 0: less. */
  readonly by: number;
}

/** By how much a figure differs, with its sign and in a word; more is worse in all of them. */
export function FigureDifference({ name, by }: FigureDifferenceProps): JSX.Element {
  const {
    whatIf: { compare: text },
  } = useText();
  const format = useFormat();
  const size = sayFigure(name, Math.abs(by), format);
  // what rounds to nothing is told as nothing
  if (size === sayFigure(name, 0, format)) return <span className="figure-by hint">{text.same}</span>;
  return by > 0 ? (
    <span className="figure-by worse">{text.more(size)}</span>
  ) : (
    <span className="figure-by better">{text.less(size)}</span>
  );
}
