import type { Ports } from "../ports/ports.ts";
import { ok } from "../result.ts";

const MONTH_SECONDS = 30 * 86_400;

/** Forgets what was done to order books a month ago and longer: nobody takes that back step by step. */
export async function forgetOldBookSteps({ store, clock }: Pick<Ports, "store" | "clock">): Promise<void> {
  await store.write(async ({ bookSteps }) => {
    await bookSteps.forgetBefore(clock.now() - MONTH_SECONDS);
    return ok(null);
  });
}
