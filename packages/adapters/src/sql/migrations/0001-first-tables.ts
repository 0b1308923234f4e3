import type { Migration } from "./migration.ts";

/** Plants, order books, imports, runs, plans and events. */
export const firstTables: Migration = {
  version: 1,
  name: "first tables",
  statements: [
    `create table formweek.plants (
      id text primary key,
      revision bigint not null check (revision >= 1),
      name text not null,
      time_zone text not null,
      currency text not null,
      document json not null
    )`,
    `create table formweek.order_books (
      plant_id text primary key references formweek.plants,
      revision bigint not null check (revision >= 1)
    )`,
    `create table formweek.orders (
      plant_id text not null references formweek.order_books,
      id text not null,
      customer text not null,
      product_id text not null,
      pieces bigint not null check (pieces >= 1),
      due_at bigint not null,
      earliest_start_at bigint,
      weight double precision not null check (weight >= 0),
      kind text not null check (kind in ('firm', 'forecast')),
      under_tolerance double precision not null,
      over_tolerance double precision not null,
      parts_allowed boolean not null,
      primary key (plant_id, id)
    )`,
    `create table formweek.imports (
      id text primary key,
      plant_id text not null,
      base_revision bigint not null,
      change json,
      counts json not null,
      created_at bigint not null,
      created_by text not null,
      accepted json
    )`,
    `create index imports_waiting on formweek.imports (created_at) where accepted is null`,
    `create table formweek.runs (
      id text primary key,
      plant_id text not null references formweek.plants,
      revision bigint not null check (revision >= 1),
      state text not null check (state in ('queued', 'running', 'done', 'stopped', 'failed')),
      params json not null,
      stop_requested boolean not null,
      requested_at bigint not null,
      requested_by text not null,
      started_at bigint,
      ended_at bigint,
      progress json,
      curve json not null,
      plan_id text,
      problem json,
      recoveries integer not null
    )`,
    `create unique index runs_one_active_per_plant on formweek.runs (plant_id) where state in ('queued', 'running')`,
    `create table formweek.plans (
      id text primary key,
      plant_id text not null references formweek.plants,
      run_id text not null unique,
      created_at bigint not null,
      engine_version text not null,
      seed bigint not null,
      steps bigint not null,
      summary json not null,
      document json not null
    )`,
    `create index plans_newest on formweek.plans (plant_id, created_at desc, id desc)`,
    `create table formweek.event_counters (
      plant_id text primary key,
      last_sequence bigint not null check (last_sequence >= 1)
    )`,
    `create table formweek.events (
      plant_id text not null,
      sequence bigint not null,
      at bigint not null,
      body json not null,
      published boolean not null,
      primary key (plant_id, sequence)
    )`,
    `create index events_unpublished on formweek.events (plant_id, sequence) where not published`,
  ],
};
