import type { BetterPlanEvent, PlantEvent, SolveProgressEvent } from "../events.ts";

/** What travels on a plant's channel: stored events, and news of a run under way that are not stored. */
export type PlantMessage = PlantEvent | SolveProgressEvent | BetterPlanEvent;

/**
 * Carries messages to whoever listens now, across processes in distributed mode. Delivery is at most once and in order
 * per publisher; a listener that needs every stored event reads the store after the last sequence it saw.
 */
export interface EventBus {
  readonly publish: (message: PlantMessage) => Promise<void>;
  /** Resolves when listening has begun; a listener must not throw. */
  readonly subscribe: (
    plantId: string,
    listener: (message: PlantMessage) => void,
  ) => Promise<{ readonly close: () => Promise<void> }>;
}
