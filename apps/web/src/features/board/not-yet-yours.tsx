import type { JSX } from "react";
import { useText } from "../../text/text.ts";

/** Stands where a plan is changed by hand, as long as the plan is a run's best so far. */
export function NotYetYours(): JSX.Element {
  const { look: text } = useText();
  return <p className="hint">{text.noEditsHere}</p>;
}
