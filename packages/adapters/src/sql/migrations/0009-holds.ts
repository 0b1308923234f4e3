import type { Migration } from "./migration.ts";

/**
 * Capacity promised to customers until an instant. A hold that became an order names it as long as the order is in the book; the
 * step that changes what is held is one of its own kind.
 */
export const holds: Migration = {
  version: 9,
  name: "holds",
  statements: [
    `create table formweek.hold_lists (
      plant_id text primary key references formweek.plants,
      revision bigint not null check (revision >= 1)
    )`,
    `create table formweek.holds (
      plant_id text not null references formweek.hold_lists,
      id text not null,
      key text not null,
      wish text not null,
      planned_order json not null,
      stock_pieces bigint not null check (stock_pieces >= 0),
      kind text not null,
      held_until bigint not null,
      held_by text not null,
      held_at bigint not null,
      state text not null check (state in ('held', 'ordered', 'released', 'expired')),
      ended_by text,
      ended_at bigint,
      order_number text,
      primary key (plant_id, id),
      unique (plant_id, key),
      foreign key (plant_id, order_number) references formweek.orders on delete set null (order_number),
      check ((state = 'held') = (ended_at is null)),
      check (order_number is null or state = 'ordered')
    )`,
    `create index holds_running_out on formweek.holds (held_until) where state = 'held'`,
    `create index holds_of_orders on formweek.holds (plant_id, order_number) where order_number is not null`,
    `alter table formweek.plan_steps drop constraint plan_steps_kind_check`,
    `alter table formweek.plan_steps add constraint plan_steps_kind_check
      check (kind in ('run', 'edit', 'undo', 'redo', 'restore', 'publish', 'hold'))`,
    `create index plan_steps_held on formweek.plan_steps (plant_id, revision desc) where kind = 'hold'`,
  ],
};
