export type * from "./problem/problem-data.ts";
export type * from "./plan/plan.ts";
export type * from "./solve-env.ts";
export type * from "./result.ts";
export { auditPlan } from "./audit/audit-plan.ts";
export { ENGINE_VERSION } from "./engine-version.ts";
export { solve } from "./solve-checked.ts";
export { validate as validateProblem } from "./problem/validate.ts";
export { boundOf } from "./bound.ts";
