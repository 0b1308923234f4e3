import { firstTables } from "./0001-first-tables.ts";
import { pins } from "./0002-pins.ts";
import { workingPlan } from "./0003-working-plan.ts";
import { hours } from "./0004-hours.ts";
import { runTasks } from "./0005-run-tasks.ts";
import { frozenHorizon } from "./0006-frozen-horizon.ts";
import { bookSteps } from "./0007-book-steps.ts";
import { provisionalPlans } from "./0008-provisional-plans.ts";
import { holds } from "./0009-holds.ts";
import { scenarios } from "./0010-scenarios.ts";
import type { Migration } from "./migration.ts";

/** Every step, in order. */
export const migrations: readonly Migration[] = [
  firstTables,
  pins,
  workingPlan,
  hours,
  runTasks,
  frozenHorizon,
  bookSteps,
  provisionalPlans,
  holds,
  scenarios,
];
