import type { JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { Relief } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { useText } from "../../text/text.ts";
import { resourceName } from "./load-words.ts";

interface ReliefListProps {
  readonly plant: Plant;
  readonly reliefs: readonly Relief[];
}

/** What one more shift or copy would give. */
export function ReliefList({ plant, reliefs }: ReliefListProps): JSX.Element {
  const { load: text } = useText();
  const format = useFormat();
  if (reliefs.length === 0) return <p className="hint">{text.noRelief}</p>;
  const share = (value: number | null): string => (value === null ? text.noHours : format.percent(value));
  const what = (relief: Relief): string => {
    if (relief.kind === "copy") return text.copy(format.count(relief.copies));
    const when = format.instant(Date.parse(relief.start) / 1000);
    return relief.lineId === null
      ? text.shift(relief.name, when)
      : text.shiftOn(relief.name, when, resourceName(plant, "line", relief.lineId));
  };
  return (
    <ul className="relief-list">
      {reliefs.map((relief) => (
        <li key={relief.kind}>
          {text.gain(
            what(relief),
            format.hours(relief.gainedSeconds),
            share(relief.shareBefore),
            share(relief.shareAfter),
          )}
        </li>
      ))}
    </ul>
  );
}
