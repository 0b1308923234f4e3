import { mouldOutOfService } from "@formweek/capacity-model";
import type { Mould, Plant } from "@formweek/capacity-model";
import type { CycleService, ProblemMould } from "@formweek/scheduler";

/** The plant's moulds for the scheduler. */
export function problemMoulds(plant: Plant): readonly ProblemMould[] {
  const carryingSeconds = Math.round((plant.changeoverRules[0]?.carryingMinutes ?? 0) * 60);
  return plant.moulds.map((mould) => {
    const service = cycleService(mould);
    return {
      id: mould.id,
      copies: mould.copies,
      carryingSeconds,
      outOfService: mouldOutOfService(mould, plant.timeZone),
      ...(service === null ? {} : { service }),
    };
  });
}

/** Null without a counter, and where a service takes no time: there is nothing to plan then. */
function cycleService(mould: Mould): CycleService | null {
  const seconds = Math.round(mould.serviceHours * 3600);
  return mould.serviceAfterCycles === null || seconds === 0
    ? null
    : { afterCycles: mould.serviceAfterCycles, seconds, cyclesDone: mould.cyclesSinceService };
}
