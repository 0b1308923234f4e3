import type { PlantEvent, PlantEventBody } from "../events.ts";

/** Outbox and history in one: written in the transaction of the change, published after it. */
export interface EventRepository {
  /** Stores the event with the plant's next sequence (locks the plant's counter until the transaction ends). */
  readonly append: (plantId: string, at: number, body: PlantEventBody) => Promise<PlantEvent>;
  /** Events of the plant with a sequence above `sequence`, ascending, at most `limit`. */
  readonly after: (plantId: string, sequence: number, limit: number) => Promise<readonly PlantEvent[]>;
  /** Highest sequence of the plant, 0 when it has none. */
  readonly lastSequence: (plantId: string) => Promise<number>;
  /** Not yet published events of every plant, by plant and sequence, at most `limit`. */
  readonly unpublished: (limit: number) => Promise<readonly PlantEvent[]>;
  readonly markPublished: (events: readonly PlantEvent[]) => Promise<void>;
}
