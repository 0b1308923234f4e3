export { inProcessEventBus } from "./event-bus.ts";
export { inProcessQueue, type InProcessQueueOptions } from "./job-queue.ts";
