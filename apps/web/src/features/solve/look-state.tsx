import { useEffect, useState, type JSX } from "react";
import { secondsOf } from "../../kernels/board-plan.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useText } from "../../text/text.ts";
import type { ShownProvisional } from "./use-look.ts";

/** Says that the plan on the board is a run's best so far, how old it is, and that it is not changed by hand. */
export function LookState({ plan }: { readonly plan: ShownProvisional }): JSX.Element {
  const { look: text } = useText();
  const age = useAge(secondsOf(plan.foundAt));
  return (
    <section className="plan-state look-state" aria-label={text.title}>
      <p role="status">
        <strong>{text.notYours}</strong> {text.noEdits}
      </p>
      <span className="hint look-age">{text.age(age)}</span>
    </section>
  );
}

/** Seconds since an instant, told anew each second. */
function useAge(at: number): number {
  const [now, setNow] = useState(nowSeconds);
  useEffect(() => {
    const timer = setInterval(() => setNow(nowSeconds()), 1000);
    return () => clearInterval(timer);
  }, []);
  return Math.max(0, now - at);
}
