import type { Migration } from "./migration.ts";

/** Best plans so far of runs that are going on, one a run, and which of them a stop is to keep. */
export const provisionalPlans: Migration = {
  version: 8,
  name: "provisional plans",
  statements: [
    `alter table formweek.runs add column keep integer`,
    `create table formweek.provisional_plans (
      run_id text primary key references formweek.runs,
      number integer not null check (number >= 1),
      found_at bigint not null,
      document json not null
    )`,
  ],
};
