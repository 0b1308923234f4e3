export { redisEventBus } from "./event-bus.ts";
export { bullmqConsumer, type ConsumerOptions } from "./job-consumer.ts";
export { bullmqQueue, type RedisOptions, type RedisQueue } from "./job-queue.ts";
