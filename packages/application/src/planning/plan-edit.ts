export type { PlanEdit } from "@formweek/scheduler";
