import type { Migration } from "./migration.ts";

/** Changes of a plant's hours as steps of its working plan: what an undo has to take back besides the plan. */
export const hours: Migration = {
  version: 4,
  name: "hours",
  statements: [`alter table formweek.plan_steps add column hours json`],
};
