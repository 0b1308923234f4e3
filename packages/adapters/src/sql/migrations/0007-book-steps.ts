import type { Migration } from "./migration.ts";

/** What each desk did to the order book, so that it can be taken back after a reload. */
export const bookSteps: Migration = {
  version: 7,
  name: "book steps",
  statements: [
    `create table formweek.book_steps (
      number bigint generated always as identity primary key,
      plant_id text not null references formweek.plants,
      desk text not null,
      kind text not null check (kind in ('change', 'undo', 'redo')),
      step_of bigint check ((kind = 'change') = (step_of is null)),
      change_count integer not null check (change_count >= 0),
      changes json not null,
      done_by text not null,
      done_at bigint not null
    )`,
    `create index book_steps_of_desk on formweek.book_steps (plant_id, desk, done_by, number)`,
    `create index book_steps_by_age on formweek.book_steps (done_at)`,
  ],
};
