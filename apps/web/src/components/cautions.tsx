import type { JSX } from "react";
import { useText } from "../text/text.ts";
import { Icon } from "./icon.tsx";

/** The usual cautions for work on a line with hot tooling; it leaves the procedure to the site and trained people. */
export function Cautions(): JSX.Element {
  const { details } = useText();
  return (
    <section className="safety">
      <h3>
        <Icon name="warn" /> {details.safetyTitle}
      </h3>
      <ul>
        {details.safety.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <p className="hint">{details.safetySource}</p>
    </section>
  );
}
