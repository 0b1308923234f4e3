import type { Migration } from "./migration.ts";

/**
 * Scenarios, each with what it came to when it was worked out last. Steps of the working plan keep what they changed in plant and
 * orders, which was the plant's hours alone until now.
 */
export const scenarios: Migration = {
  version: 10,
  name: "scenarios",
  statements: [
    `create table formweek.scenarios (
      plant_id text not null references formweek.plants,
      id text not null,
      revision bigint not null check (revision >= 1),
      name text not null,
      changes json not null,
      written_by text not null,
      written_at bigint not null,
      adopted json,
      outcome json,
      sketch json,
      primary key (plant_id, id),
      check ((outcome is null) = (sketch is null))
    )`,
    `alter table formweek.plan_steps rename column hours to records`,
  ],
};
