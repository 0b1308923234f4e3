import { parentPort, workerData } from "node:worker_threads";
import type { SolveParams } from "@formweek/scheduler";
import type { BenchInstance } from "../fixtures/public-sets/bench-instance.ts";
import { solveInstance } from "./bench-solve.ts";

const { instance, params } = workerData as { readonly instance: BenchInstance; readonly params: SolveParams };
parentPort?.postMessage(solveInstance(instance, params));
