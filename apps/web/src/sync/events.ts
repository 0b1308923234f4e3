import { PlantMessage, type SolveRunResponse, type WorkingPlanResponse } from "@formweek/contracts";
import { useQueryClient, type QueryClient } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { keys } from "./queries.ts";
import { followSolve } from "./solves.ts";

export type Connection = "connecting" | "open" | "lost";

const names = [
  "solve-progress",
  "solve-ended",
  "plan-saved",
  "orders-changed",
  "pins-changed",
  "plant-changed",
  "working-plan-changed",
] as const;
const longestWaitMs = 15_000;

/** Keeps what is known of a plant fresh by the server's events; comes back by itself after a lost connection. */
export function usePlantEvents(plantId: string | null): Connection {
  const client = useQueryClient();
  const [connection, setConnection] = useState<Connection>("connecting");
  useEffect(() => {
    if (plantId === null) return;
    return listen(plantId, {
      onMessage: (message) => take(client, plantId, message),
      onConnection: (next) => {
        setConnection((before) => {
          // What happened while nobody listened is not sent again: ask for everything once.
          if (before === "lost" && next === "open") void client.invalidateQueries();
          return next;
        });
      },
    });
  }, [client, plantId]);
  return connection;
}

interface Listener {
  readonly onMessage: (message: PlantMessage) => void;
  readonly onConnection: (connection: Connection) => void;
}

function listen(plantId: string, { onMessage, onConnection }: Listener): () => void {
  let source: EventSource | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waitMs = 500;
  const open = (): void => {
    source = new EventSource(`/api/plants/${encodeURIComponent(plantId)}/events`);
    source.onopen = () => {
      waitMs = 500;
      onConnection("open");
    };
    source.onerror = () => {
      source?.close();
      onConnection("lost");
      timer = setTimeout(open, waitMs);
      waitMs = Math.min(longestWaitMs, waitMs * 2);
    };
    for (const name of names) {
      source.addEventListener(name, (event) => {
        const message = readMessage(event.data);
        if (message !== null) onMessage(message);
      });
    }
  };
  const reopen = (): void => {
    clearTimeout(timer);
    source?.close();
    open();
  };
  open();
  window.addEventListener("online", reopen);
  return () => {
    window.removeEventListener("online", reopen);
    clearTimeout(timer);
    source?.close();
  };
}

function readMessage(data: unknown): PlantMessage | null {
  if (typeof data !== "string") return null;
  try {
    const parsed = PlantMessage.safeParse(JSON.parse(data));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

function take(client: QueryClient, plantId: string, message: PlantMessage): void {
  const old = (queryKey: readonly string[]): void => void client.invalidateQueries({ queryKey });
  switch (message.type) {
    case "solve-progress":
      followSolve(plantId, message.runId);
      client.setQueryData<SolveRunResponse>(keys.solve(plantId, message.runId), (known) =>
        withProgress(known, message),
      );
      return;
    case "solve-ended":
      old(keys.solve(plantId, message.runId));
      return;
    case "plan-saved":
    case "working-plan-changed":
      old(keys.workingPlan(plantId));
      old(keys.publications(plantId));
      if (isPlanKnown(client, plantId, message)) old(keys.problems(plantId));
      old(keys.latestPlan(plantId));
      old(keys.orders(plantId));
      old(keys.load(plantId));
      return;
    case "orders-changed":
      old(keys.orders(plantId));
      old(keys.load(plantId));
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      return;
    case "pins-changed":
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      return;
    case "plant-changed":
      old(keys.plants);
      old(keys.plant(plantId));
      old(keys.rates(plantId));
      old(keys.load(plantId));
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      return;
  }
}

/** The plan that is worked on stays, but what is frozen of it may be another: it was given out. */
function isPlanKnown(client: QueryClient, plantId: string, { planId }: { readonly planId: string }): boolean {
  return client.getQueryData<WorkingPlanResponse>(keys.workingPlan(plantId))?.planId === planId;
}

/** Progress joins the run that is known; the curve gets its newest point. An ended run stays ended. */
function withProgress(
  known: SolveRunResponse | undefined,
  message: Extract<PlantMessage, { type: "solve-progress" }>,
): SolveRunResponse | undefined {
  if (known === undefined || (known.state !== "queued" && known.state !== "running")) return known;
  const { progress, state } = message;
  if (progress === null) return { ...known, state };
  const last = known.curve.at(-1);
  const isNewer = last === undefined || progress.elapsedMs > last[0];
  return {
    ...known,
    state,
    progress,
    curve: isNewer ? [...known.curve, [progress.elapsedMs, progress.bestTotal]] : known.curve,
  };
}
