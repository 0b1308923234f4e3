import type { Segment } from "../plan/plan.ts";
import type { OperatorSupply, ProblemLine } from "../problem/problem-data.ts";
import type { PlanLookUps } from "./plan-look-ups.ts";

/** Heads left over, in hundredths, from `from` until the next entry; before the first entry nothing is asked for. */
export interface SpareHeads {
  readonly from: number;
  readonly spare: number;
}

/** Whether the line holds operators in this segment: while it runs and while it warms up. */
function needsHeads(segment: Segment): boolean {
  return segment.kind === "run" || (segment.kind === "stop" && segment.reason === "warm-up");
}

function linesOf(context: PlanLookUps, pool: OperatorSupply): ProblemLine[] {
  return context.problem.lines.filter((line) => line.poolId === pool.id && line.operatorsHundredths > 0);
}

/** Spare heads of a pool over time: those of the open crews less those of the lines that need them. */
export function spareHeads(context: PlanLookUps, pool: OperatorSupply): SpareHeads[] {
  const deltas = new Map<number, number>();
  const add = (at: number, hundredths: number) => deltas.set(at, (deltas.get(at) ?? 0) + hundredths);
  for (const { workingTime, hundredths } of pool.crews) {
    workingTime.starts.forEach((start) => add(start, hundredths));
    workingTime.ends.forEach((end) => add(end, -hundredths));
  }
  for (const line of linesOf(context, pool)) {
    for (const segment of context.segmentsOfLine.get(line.id) ?? []) {
      if (!needsHeads(segment) || segment.end === segment.start) continue;
      add(segment.start, -line.operatorsHundredths);
      add(segment.end, line.operatorsHundredths);
    }
  }
  let spare = 0;
  // numbers of a typed array sort without a comparison that is called
  return Array.from(Float64Array.from(deltas.keys()).sort(), (from) => {
    spare += deltas.get(from) ?? 0;
    return { from, spare };
  });
}

/** Most heads to spare at any instant of [start, end); 0 outside the profile. O(log n + length). */
export function mostSpare(profile: readonly SpareHeads[], start: number, end: number): number {
  let low = 0;
  let high = profile.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((profile[middle] as SpareHeads).from <= start) low = middle + 1;
    else high = middle;
  }
  let most = profile[low - 1]?.spare ?? 0;
  for (let index = low; index < profile.length && (profile[index] as SpareHeads).from < end; index += 1) {
    most = Math.max(most, (profile[index] as SpareHeads).spare);
  }
  return most;
}
