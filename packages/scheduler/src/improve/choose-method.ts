import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { balanceSearch } from "./balance-search.ts";
import { plantSearch } from "./plant-search.ts";
import type { SearchMethod } from "./search-method.ts";
import { sequenceSearch } from "./sequence-search.ts";

/** From the most special to the most general: the first that supports the problem is taken. */
const METHODS: readonly SearchMethod[] = [sequenceSearch, balanceSearch, plantSearch];

export function chooseMethod(problem: CompiledProblem): SearchMethod {
  return METHODS.find((method) => method.supports(problem)) ?? plantSearch;
}
