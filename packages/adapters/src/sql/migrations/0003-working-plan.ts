import type { Migration } from "./migration.ts";

/**
 * Plans by hand, and the steps of each plant's working plan. A plant that was planned before begins with its newest plan,
 * which was the one shown until now.
 */
export const workingPlan: Migration = {
  version: 3,
  name: "working plan",
  statements: [
    `alter table formweek.plans alter column run_id drop not null`,
    `alter table formweek.plans add column parent_id text references formweek.plans`,
    `alter table formweek.plans add column edit json`,
    `alter table formweek.plans add constraint plans_made_one_way check (
      (run_id is null) = (parent_id is not null) and (parent_id is null) = (edit is null)
    )`,
    `create table formweek.plan_steps (
      plant_id text not null references formweek.plants,
      revision bigint not null check (revision >= 1),
      kind text not null check (kind in ('run', 'edit', 'undo', 'redo', 'restore', 'publish')),
      from_plan_id text references formweek.plans,
      plan_id text not null references formweek.plans,
      undo_to bigint check (undo_to < revision),
      redo_to bigint check (redo_to < revision),
      note text,
      done_by text not null,
      done_at bigint not null,
      primary key (plant_id, revision),
      foreign key (plant_id, undo_to) references formweek.plan_steps,
      foreign key (plant_id, redo_to) references formweek.plan_steps,
      check ((kind = 'publish') = (note is not null))
    )`,
    `create index plan_steps_published on formweek.plan_steps (plant_id, revision desc) where kind = 'publish'`,
    `insert into formweek.plan_steps (plant_id, revision, kind, plan_id, done_by, done_at)
      select distinct on (plan.plant_id)
        plan.plant_id, 1, 'run', plan.id, coalesce(run.requested_by, 'local'), plan.created_at
      from formweek.plans plan left join formweek.runs run on run.id = plan.run_id
      order by plan.plant_id, plan.created_at desc, plan.id desc`,
  ],
};
