import { useEffect, useState, type JSX } from "react";
import { useFormat } from "../format/use-format.ts";
import { tryNow, type Connection } from "../sync/events.ts";
import { nowSeconds } from "../sync/now.ts";
import { useIsSlow } from "../sync/slow-calls.ts";
import { useText } from "../text/text.ts";

/** How long the server's return is told. */
const tellReturnMs = 12_000;

/** A word when the server is gone, half reached, slow or back: since when, and what can be done meanwhile. */
export function ConnectionBanner({ connection }: { readonly connection: Connection }): JSX.Element {
  const { app: text } = useText();
  const format = useFormat();
  const isSlow = useIsSlow();
  const back = useReturn(connection);
  const words = (): readonly [title: string, hint: string] | null => {
    if (connection.kind === "lost") {
      const since = format.instant(connection.since);
      return connection.isAnswering
        ? [text.newsLost(since), text.newsLostHint]
        : [text.serverGone(since), text.serverGoneHint];
    }
    if (isSlow) return [text.serverSlow, text.serverSlowHint];
    if (back !== null)
      return [text.serverBack, text.serverBackHint(format.instant(back.from), format.instant(back.to))];
    return null;
  };
  const said = words();
  return (
    <div
      role="status"
      className={said === null ? undefined : back === null ? "shell-warning" : "shell-warning shell-back"}
    >
      {said !== null && (
        <p>
          <strong>{said[0]}</strong> {said[1]}
        </p>
      )}
      {connection.kind === "lost" && (
        <button type="button" className="button" onClick={tryNow}>
          {text.tryNow}
        </button>
      )}
    </div>
  );
}

/** From when to when the server was gone, for a while after its return. */
function useReturn(connection: Connection): { readonly from: number; readonly to: number } | null {
  const from = connection.kind === "open" ? connection.wasLostAt : null;
  const [back, setBack] = useState<{ readonly from: number; readonly to: number } | null>(null);
  useEffect(() => {
    if (from === null) return;
    setBack({ from, to: nowSeconds() });
    const timer = setTimeout(() => setBack(null), tellReturnMs);
    return () => {
      clearTimeout(timer);
      setBack(null);
    };
  }, [from, connection]);
  return back;
}
