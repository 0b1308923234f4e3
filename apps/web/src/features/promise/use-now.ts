import { useEffect, useState } from "react";
import { nowSeconds } from "../../sync/now.ts";

const tickMs = 15_000;

/** The clock of this machine, seconds since the epoch, a few times a minute. */
export function useNow(): number {
  const [now, setNow] = useState(nowSeconds);
  useEffect(() => {
    const timer = setInterval(() => setNow(nowSeconds()), tickMs);
    return () => clearInterval(timer);
  }, []);
  return now;
}
