import { useEffect, useState, type JSX } from "react";
import { useText } from "../../text/text.ts";
import { useBoardStore } from "./use-board.ts";

/** How long it stays in sight, ms. */
const shownMs = 6000;

/** Says, when a run was to be moved, that the plan on the board is not changed by hand. */
export function NotTaken(): JSX.Element | null {
  const { look: text } = useText();
  const store = useBoardStore();
  const [tries, setTries] = useState(0);
  useEffect(
    () =>
      store.onEffect((effect) => {
        if (effect.kind === "tell not taken") setTries((before) => before + 1);
      }),
    [store],
  );
  useEffect(() => {
    if (tries === 0) return;
    const timer = setTimeout(() => setTries(0), shownMs);
    return () => clearTimeout(timer);
  }, [tries]);
  if (tries === 0) return null;
  return (
    <div role="alert" className="carry-strip">
      <p key={tries}>{text.notTaken}</p>
    </div>
  );
}
