import type { Migration } from "./migration.ts";

/** Orders that planners hold in their places; a pin goes with its order. */
export const pins: Migration = {
  version: 2,
  name: "pins",
  statements: [
    `create table formweek.pin_lists (
      plant_id text primary key references formweek.plants,
      revision bigint not null check (revision >= 1)
    )`,
    `create table formweek.pins (
      plant_id text not null references formweek.pin_lists,
      order_id text not null,
      line_id text,
      start_at bigint,
      pinned_by text not null,
      pinned_at bigint not null,
      primary key (plant_id, order_id),
      foreign key (plant_id, order_id) references formweek.orders on delete cascade,
      check (line_id is not null or start_at is not null)
    )`,
  ],
};
