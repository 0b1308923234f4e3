import type { FastifyTypeProvider, FastifyInstance, RawServerDefault, FastifyBaseLogger } from "fastify";
import type { IncomingMessage, ServerResponse } from "node:http";
import type { z } from "zod";

type DeepReadonly<T> = T extends readonly (infer Item)[]
  ? readonly DeepReadonly<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> }
    : T;

/** Request parts come parsed by their zod schema; replies may be readonly records of their schema's shape. */
interface WireTypeProvider extends FastifyTypeProvider {
  validator: this["schema"] extends z.ZodType ? z.output<this["schema"]> : unknown;
  serializer: this["schema"] extends z.ZodType ? DeepReadonly<z.output<this["schema"]>> : unknown;
}

/** A server whose routes are checked against the wire format. */
export type WireServer = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  WireTypeProvider
>;
