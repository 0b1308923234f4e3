import type { Migration } from "./migration.ts";

/** Runs that look for something beside a plan, and what they found. Every run until now was to make a plan. */
export const runTasks: Migration = {
  version: 5,
  name: "run tasks",
  statements: [
    `alter table formweek.runs add column task json not null default '{"kind":"plan","favour":null}'`,
    `alter table formweek.runs alter column task drop default`,
    `alter table formweek.runs add column findings json`,
  ],
};
