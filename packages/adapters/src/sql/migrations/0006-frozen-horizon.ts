import type { Migration } from "./migration.ts";

/** Until when the runs of a plan that was given out stay in place; plans given out before froze nothing. */
export const frozenHorizon: Migration = {
  version: 6,
  name: "frozen horizon",
  statements: [
    `alter table formweek.plan_steps add column frozen_until bigint check (frozen_until is null or kind = 'publish')`,
  ],
};
