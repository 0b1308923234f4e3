import type { EventBus, Log, PlantMessage } from "@formweek/application";

type Listener = (message: PlantMessage) => void;

/** Messages between parts of one process, delivered before `publish` resolves. */
export function inProcessEventBus(log: Log): EventBus {
  const listenersOf = new Map<string, Set<Listener>>();
  return {
    publish: (message) => {
      for (const listener of [...(listenersOf.get(message.plantId) ?? [])]) {
        try {
          listener(message);
        } catch (error) {
          log.error("A listener failed", { plantId: message.plantId }, error);
        }
      }
      return Promise.resolve();
    },
    subscribe: (plantId, listener) => {
      const listeners = listenersOf.get(plantId) ?? new Set<Listener>();
      listenersOf.set(plantId, listeners);
      // A fresh function for each subscription: one listener may subscribe twice.
      const mine: Listener = (message) => listener(message);
      listeners.add(mine);
      return Promise.resolve({
        close: () => {
          listeners.delete(mine);
          if (listeners.size === 0) listenersOf.delete(plantId);
          return Promise.resolve();
        },
      });
    },
  };
}
