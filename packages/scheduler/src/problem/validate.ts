import type { ProblemFault } from "../result.ts";
import type { ProblemData } from "./problem-data.ts";
import { resourceFaults } from "./validate-resources.ts";
import { jobFaults } from "./validate-jobs.ts";
import { pinFaults } from "./validate-pins.ts";

/** Longest horizon, s: every instant must fit 31 bits with room to add. About 31 years. */
const LONGEST_HORIZON_SECONDS = 1_000_000_000;

function horizonFaults({ horizon }: ProblemData): ProblemFault[] {
  const { start, end } = horizon;
  const subject = "horizon";
  if (!Number.isSafeInteger(start) || !Number.isSafeInteger(end)) {
    return [
      {
        code: "horizon-not-whole-seconds",
        subject,
        text: `The horizon runs from ${start} to ${end}.`,
        remedy: "Give whole seconds.",
      },
    ];
  }
  if (end <= start) {
    return [
      {
        code: "horizon-empty",
        subject,
        text: "The planning horizon ends before it begins.",
        remedy: "Choose a later end.",
      },
    ];
  }
  if (end - start > LONGEST_HORIZON_SECONDS) {
    return [
      {
        code: "horizon-too-long",
        subject,
        text: "The planning horizon is longer than 31 years.",
        remedy: "Choose an earlier end.",
      },
    ];
  }
  return [];
}

/** All faults of the problem: inputs that no plan could respect as given. Orders that merely cannot be planned are no fault. */
export function validate(data: ProblemData): readonly ProblemFault[] {
  return [...horizonFaults(data), ...resourceFaults(data), ...jobFaults(data), ...pinFaults(data)];
}
