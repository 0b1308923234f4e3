import type { Ports } from "./ports/ports.ts";
import { ok } from "./result.ts";

const BATCH = 200;

/**
 * Publishes stored events that were not published yet, in order. Called after every change and at start-up, so an event
 * outlives a crash between the change and its publication; listeners may see one twice and go by its sequence. A bus
 * that fails does not undo the change: the events wait for the next call.
 */
export async function publishPending(ports: Pick<Ports, "store" | "bus" | "log">): Promise<void> {
  try {
    for (;;) {
      const events = await ports.store.read((repositories) => repositories.events.unpublished(BATCH));
      if (events.length === 0) return;
      for (const event of events) await ports.bus.publish(event);
      await ports.store.write(async (repositories) => {
        await repositories.events.markPublished(events);
        return ok(null);
      });
      if (events.length < BATCH) return;
    }
  } catch (error) {
    ports.log.warn("Events wait: they could not be published", { reason: String(error) });
  }
}
