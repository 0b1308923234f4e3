import type { JSX } from "react";
import type { BookedOrder } from "@formweek/contracts";
import { Icon, type IconName } from "../../components/icon.tsx";
import { useText } from "../../text/text.ts";

type State = BookedOrder["state"];

const looks: Readonly<Record<State, { readonly tone: string; readonly icon: IconName | null }>> = {
  "on time": { tone: "ok", icon: "check" },
  "covered by stock": { tone: "ok", icon: "check" },
  late: { tone: "late", icon: "flag" },
  unplanned: { tone: "late", icon: "warn" },
  "partly planned": { tone: "warn", icon: "warn" },
  "not planned yet": { tone: "plain", icon: null },
};

/** State of an order by word, shape and colour. */
export function StateBadge({ state }: { readonly state: State }): JSX.Element {
  const text = useText();
  const { tone, icon } = looks[state];
  return (
    <span className={`badge badge-${tone}`}>
      {icon !== null && <Icon name={icon} />} {text.states[state]}
    </span>
  );
}
