import { plantNotFound } from "../not-found.ts";
import type { PlantMessage } from "../ports/event-bus.ts";
import type { Ports } from "../ports/ports.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

export interface WatchInput extends PlantInput {
  /** Sequence of the last event the watcher saw; null: only what comes from now on. */
  readonly afterSequence: number | null;
  /** Called in order, each stored event once; must not throw. */
  readonly onMessage: (message: PlantMessage) => void;
}

const PAGE = 500;

/** Follows a plant's events: first what was missed, then what comes. */
export const watchPlant: UseCase<WatchInput, { readonly close: () => Promise<void> }> = {
  role: "viewer",
  run: async (ports, { plantId, afterSequence, onMessage }) => {
    const known = await ports.store.read(async ({ plants, events }) => ({
      exists: (await plants.get(plantId)) !== null,
      last: await events.lastSequence(plantId),
    }));
    if (!known.exists) return refused(plantNotFound(plantId));
    const start = afterSequence === null ? known.last : Math.min(afterSequence, known.last);
    const follow = followFrom(ports, plantId, start, onMessage);
    const subscription = await ports.bus.subscribe(plantId, follow.receive);
    follow.catchUp();
    return ok({
      close: async () => {
        follow.close();
        await subscription.close();
      },
    });
  },
};

/** Hands messages on one after the other; a gap in the sequence, or a doubt, is filled from the store. */
function followFrom(
  ports: Ports,
  plantId: string,
  start: number,
  onMessage: (message: PlantMessage) => void,
) {
  let last = start;
  let open = true;
  let work: Promise<void> = Promise.resolve();

  const emit = (message: PlantMessage): void => {
    if (!open) return;
    if (message.sequence !== null) last = message.sequence;
    onMessage(message);
  };
  const readOn = async (): Promise<void> => {
    for (;;) {
      const missed = await ports.store.read(({ events }) => events.after(plantId, last, PAGE));
      for (const event of missed) emit(event);
      if (missed.length < PAGE || !open) return;
    }
  };
  const then = (step: () => Promise<void>): void => {
    work = work.then(step).catch((error: unknown) => {
      ports.log.warn("A watcher missed events for now", { plantId, reason: String(error) });
    });
  };

  return {
    receive: (message: PlantMessage): void => {
      then(async () => {
        if (message.sequence === null || message.sequence === last + 1) emit(message);
        else if (message.sequence > last) await readOn();
      });
    },
    catchUp: (): void => {
      then(readOn);
    },
    close: (): void => {
      open = false;
    },
  };
}
