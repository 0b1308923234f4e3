import { PlantMessage, type SolveRunResponse, type WorkingPlanResponse } from "@formweek/contracts";
import { useQueryClient, type QueryClient } from "@tanstack/react-query";
import { useEffect, useState } from "react";
import { nowSeconds } from "./now.ts";
import { isRunning, keys } from "./queries.ts";
import { serverAnswers } from "./reach.ts";
import { followSolve } from "./solves.ts";

/** How the server is reached. */
export type Connection =
  | { readonly kind: "connecting" }
  /** `wasLostAt`: it had been lost since then; null: never. */
  | { readonly kind: "open"; readonly wasLostAt: number | null }
  /** No events arrive; `isAnswering`: but the server answers what it is asked. */
  | { readonly kind: "lost"; readonly since: number; readonly isAnswering: boolean };

const names = [
  "solve-progress",
  "better-plan",
  "solve-ended",
  "plan-saved",
  "orders-changed",
  "pins-changed",
  "holds-changed",
  "plant-changed",
  "working-plan-changed",
  "scenarios-changed",
] as const;
const firstWaitMs = 500;
const longestWaitMs = 15_000;
const askAgain = "formweek-try-now";

/** Keeps what is known of a plant fresh by the server's events; comes back by itself after a lost connection. */
export function usePlantEvents(plantId: string | null): Connection {
  const client = useQueryClient();
  const [connection, setConnection] = useState<Connection>({ kind: "connecting" });
  useEffect(() => {
    if (plantId === null) return;
    return listen(plantId, {
      onMessage: (message) => take(client, plantId, message),
      onOpen: () => setConnection((before) => opened(before, client)),
      onLost: (isAnswering) => {
        // What nobody tells of is asked for.
        if (isAnswering) void client.invalidateQueries();
        setConnection((before) => lost(before, isAnswering));
      },
    });
  }, [client, plantId]);
  return connection;
}

function opened(before: Connection, client: QueryClient): Connection {
  if (before.kind === "open") return before;
  // What happened while nobody listened is not sent again: ask for everything once.
  if (before.kind === "lost") void client.invalidateQueries();
  return { kind: "open", wasLostAt: before.kind === "lost" ? before.since : null };
}

function lost(before: Connection, isAnswering: boolean): Connection {
  const since = before.kind === "lost" ? before.since : nowSeconds();
  return { kind: "lost", since, isAnswering };
}

interface Listener {
  readonly onMessage: (message: PlantMessage) => void;
  readonly onOpen: () => void;
  readonly onLost: (isAnswering: boolean) => void;
}

function listen(plantId: string, { onMessage, onOpen, onLost }: Listener): () => void {
  let source: EventSource | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waitMs = firstWaitMs;
  let isEnded = false;
  const open = (): void => {
    clearTimeout(timer);
    source?.close();
    const opening = new EventSource(`/api/plants/${encodeURIComponent(plantId)}/events`);
    source = opening;
    opening.onopen = () => {
      waitMs = firstWaitMs;
      onOpen();
    };
    opening.onerror = () => void lose();
    for (const name of names) {
      opening.addEventListener(name, (event) => {
        const message = readMessage(event.data);
        if (message !== null) onMessage(message);
      });
    }
  };
  const lose = async (): Promise<void> => {
    const failed = source;
    failed?.close();
    const isAnswering = await serverAnswers();
    // Another attempt may have begun meanwhile.
    if (isEnded || source !== failed) return;
    onLost(isAnswering);
    timer = setTimeout(open, waitMs);
    waitMs = Math.min(longestWaitMs, waitMs * 2);
  };
  // A server on this machine is there without any network: only one that does not answer is lost.
  const onOffline = async (): Promise<void> => {
    if (!(await serverAnswers()) && !isEnded) void lose();
  };
  const offline = (): void => void onOffline();
  open();
  window.addEventListener("online", open);
  window.addEventListener("offline", offline);
  window.addEventListener(askAgain, open);
  return () => {
    isEnded = true;
    window.removeEventListener("online", open);
    window.removeEventListener("offline", offline);
    window.removeEventListener(askAgain, open);
    clearTimeout(timer);
    source?.close();
  };
}

/** Tries to reach the server now instead of after the next wait. */
export function tryNow(): void {
  window.dispatchEvent(new Event(askAgain));
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
    case "better-plan": {
      const { runId, number, at: foundAt } = message;
      followSolve(plantId, runId);
      client.setQueryData<SolveRunResponse>(keys.solve(plantId, runId), (known) =>
        known === undefined || !isRunning(known.state)
          ? known
          : { ...known, provisional: { number, foundAt } },
      );
      return;
    }
    case "solve-ended":
      old(keys.solve(plantId, message.runId));
      old(keys.scenarios(plantId));
      return;
    case "plan-saved":
    case "working-plan-changed":
      old(keys.workingPlan(plantId));
      old(keys.publications(plantId));
      if (isPlanKnown(client, plantId, message)) old(keys.problems(plantId));
      old(keys.latestPlan(plantId));
      old(keys.orders(plantId));
      old(keys.holds(plantId));
      old(keys.promises(plantId));
      old(keys.load(plantId));
      old(keys.scenarios(plantId));
      return;
    case "orders-changed":
      old(keys.orders(plantId));
      old(keys.promises(plantId));
      old(keys.load(plantId));
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      old(keys.scenarios(plantId));
      return;
    case "pins-changed":
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      old(keys.scenarios(plantId));
      return;
    case "holds-changed":
      old(keys.holds(plantId));
      old(keys.promises(plantId));
      old(keys.problems(plantId));
      old(keys.scenarios(plantId));
      return;
    case "scenarios-changed":
      old(keys.scenarios(plantId));
      return;
    case "plant-changed":
      old(keys.plants);
      old(keys.plant(plantId));
      old(keys.rates(plantId));
      old(keys.promises(plantId));
      old(keys.load(plantId));
      old(keys.pins(plantId));
      old(keys.problems(plantId));
      old(keys.scenarios(plantId));
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
