export { SolveThreadDied, threadSolveRunner, type ThreadSolverOptions } from "./solve-runner.ts";
