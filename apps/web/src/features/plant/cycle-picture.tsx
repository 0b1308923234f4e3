import type { JSX } from "react";
import type { RateEntry } from "@formweek/contracts";
import { useFormat } from "../../format/use-format.ts";
import { cycleBar } from "../../kernels/rate-matrix.ts";
import { useText } from "../../text/text.ts";

/** The cycle as a bar: closed time (form, stabilise, trim), open time, and the wait for whatever limits it. */
export function CyclePicture({
  rate,
}: {
  readonly rate: NonNullable<RateEntry["rate"]>;
}): JSX.Element | null {
  const { plant, units } = useText();
  const { rates: text } = plant;
  const format = useFormat();
  const bar = cycleBar(rate);
  if (bar === null) return null;
  const parts = [
    ...bar.closed.map(({ name, seconds }) => ({
      key: name,
      label: text.partNames[name],
      seconds,
      look: "closed",
    })),
    { key: "open", label: text.open, seconds: bar.openSeconds, look: "open" },
    { key: "wait", label: text.wait, seconds: bar.waitSeconds, look: "wait" },
  ].filter((part) => part.seconds > 0.0005);
  const total = parts.reduce((sum, part) => sum + part.seconds, 0);
  const words = parts.map((part) => `${part.label} ${units.seconds(format.decimal(part.seconds, 2))}`);
  const { heatingSeconds, ovenPositions } = rate.parts as Readonly<Record<string, number | undefined>>;
  return (
    <figure className="cycle">
      <figcaption>
        <h3>{text.parts}</h3>
      </figcaption>
      <div className="cycle-bar" role="img" aria-label={text.pictureLabel(words.join(", "))}>
        {parts.map((part) => (
          <span
            key={part.key}
            className={`cycle-part cycle-${part.look} cycle-${part.key}`}
            style={{ width: `${(part.seconds / total) * 100}%` }}
          />
        ))}
      </div>
      <ul className="cycle-key">
        {parts.map((part) => (
          <li key={part.key}>
            <span className={`cycle-mark cycle-${part.look} cycle-${part.key}`} aria-hidden="true" />
            {part.label}
            <b>{units.seconds(format.decimal(part.seconds, 2))}</b>
          </li>
        ))}
      </ul>
      <p className="hint">
        {text.cycle(units.seconds(format.decimal(bar.cycleSeconds, 2)))}
        {heatingSeconds !== undefined && ovenPositions !== undefined && heatingSeconds > 0
          ? ` · ${text.heating(units.seconds(format.decimal(heatingSeconds, 1)), format.decimal(ovenPositions, ovenPositions % 1 === 0 ? 0 : 1))}`
          : ""}
      </p>
    </figure>
  );
}
