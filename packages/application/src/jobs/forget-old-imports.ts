import type { Ports } from "../ports/ports.ts";
import { ok } from "../result.ts";

const DAY_SECONDS = 86_400;

/** Forgets dry runs that nobody accepted within a day. */
export async function forgetOldImports({ store, clock }: Pick<Ports, "store" | "clock">): Promise<void> {
  await store.write(async ({ imports }) => {
    await imports.forgetBefore(clock.now() - DAY_SECONDS);
    return ok(null);
  });
}
