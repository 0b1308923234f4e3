export { SolveThreadDied } from "./group-thread.ts";
export { threadSolveRunner, type ThreadSolverOptions } from "./solve-runner.ts";
