import type { LateOrder } from "@formweek/contracts";
import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";

/** Why an order is late: each row is what the next one had to wait for, its bar as long as it took. */
export function LateChain({ late }: { readonly late: LateOrder }): JSX.Element {
  const { details, causes } = useText();
  const naming = useNaming();
  const format = useFormat();
  const links = late.links.map((link) => ({ ...link, seconds: secondsOf(link.to) - secondsOf(link.from) }));
  const longest = Math.max(...links.map((link) => link.seconds));
  return (
    <section className="late-chain">
      <h3>{details.whyLate}</h3>
      <p className="hint">{details.whyLateHint}</p>
      <ol>
        <li>
          <time dateTime={late.since}>{format.instant(secondsOf(late.since))}</time>
          <span>{causes.root(late, naming)}</span>
        </li>
        {links.map((link) => (
          <li key={`${link.from} ${link.text}`} data-kind={link.kind}>
            <time dateTime={link.from}>{format.instant(secondsOf(link.from))}</time>
            <span>{causes.link(link, link.seconds, naming)}</span>
            <span
              className="late-chain-bar"
              aria-hidden="true"
              style={{ inlineSize: `${(100 * link.seconds) / longest}%` }}
            />
          </li>
        ))}
      </ol>
    </section>
  );
}
