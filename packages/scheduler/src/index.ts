export type * from "./problem/problem-data.ts";
export type * from "./plan/plan.ts";
export type * from "./solve-env.ts";
export type * from "./result.ts";
export { auditPlan } from "./audit/audit-plan.ts";
