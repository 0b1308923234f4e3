import type { EventBus, PlantMessage } from "@formweek/application";
import { openRedis } from "./connection.ts";
import { channelOf, defaultPrefix } from "./job-names.ts";
import type { RedisOptions } from "./job-queue.ts";

type Listener = (message: PlantMessage) => void;

/**
 * Messages between processes by Redis publish and subscribe. What is said while a connection is down passes a listener
 * by; the stored events do not, because they lie in the database and listeners go by their sequence.
 */
export function redisEventBus(options: RedisOptions): EventBus & { readonly close: () => Promise<void> } {
  const { log, prefix = defaultPrefix } = options;
  const sender = openRedis(options.url, "prompt", log);
  const receiver = openRedis(options.url, "patient", log);
  const listenersOf = new Map<string, Set<Listener>>();
  receiver.on("message", (channel: string, text: string) => {
    for (const listener of [...(listenersOf.get(channel) ?? [])]) {
      try {
        listener(JSON.parse(text) as PlantMessage);
      } catch (error) {
        log.error("A listener failed", { channel }, error);
      }
    }
  });
  return {
    publish: async (message) => {
      await sender.publish(channelOf(prefix, message.plantId), JSON.stringify(message));
    },
    subscribe: async (plantId, listener) => {
      const channel = channelOf(prefix, plantId);
      const listeners = listenersOf.get(channel) ?? new Set<Listener>();
      listenersOf.set(channel, listeners);
      // A fresh function for each subscription: one listener may subscribe twice.
      const mine: Listener = (message) => listener(message);
      listeners.add(mine);
      await receiver.subscribe(channel);
      return {
        close: async () => {
          if (!listeners.delete(mine) || listeners.size > 0) return;
          listenersOf.delete(channel);
          if (receiver.status === "ready") await receiver.unsubscribe(channel);
        },
      };
    },
    close: () => {
      sender.disconnect();
      receiver.disconnect();
      return Promise.resolve();
    },
  };
}
