import type { Hold } from "@formweek/contracts";
import type { JSX } from "react";
import { Link } from "wouter";
import { Icon } from "../../components/icon.tsx";
import { personName } from "../../format/person.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";

/** For whom sales holds a run, until when, and what that means for the planner. */
export function HoldNote({ hold }: { readonly hold: Hold }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const at = (iso: string): string => format.instant(secondsOf(iso));
  const { holds } = text;
  return (
    <section className="hold" aria-label={holds.panelTitle}>
      <h3>
        <Icon name="tag" /> {holds.panelTitle}
      </h3>
      <p>
        {holds.panel(hold.customer, at(hold.promised), at(hold.until))}{" "}
        {holds.panelBy(personName(hold.heldBy, text), at(hold.heldAt))}
      </p>
      <p className="hint">{holds.panelHint}</p>
      <Link href="/promise" className="button">
        {holds.toHolds}
      </Link>
    </section>
  );
}
