import type { Plant } from "@formweek/capacity-model";
import type { BookedOrder, PlanResponse, ScenarioChange } from "@formweek/contracts";
import { useMemo } from "react";
import { scenarioChangeWords } from "../../format/scenario-words.ts";
import { useFormat } from "../../format/use-format.ts";
import { boardPlan } from "../../kernels/board-plan.ts";
import type { ChangeGround } from "../../kernels/scenario-draft.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";

/** What changes are written against and told with. */
export interface ScenarioGround extends ChangeGround {
  readonly plantId: string;
  /** Orders of the book by number. */
  readonly orders: ReadonlyMap<string, BookedOrder>;
  /** A change as one plain sentence. */
  readonly say: (change: ScenarioChange) => string;
}

export function useScenarioGround(
  plan: PlanResponse,
  plant: Plant,
  booked: readonly BookedOrder[],
): ScenarioGround {
  const text = useText();
  const format = useFormat();
  return useMemo(() => {
    const clock = zoneClock(plant.timeZone);
    const orders = new Map(booked.map((order) => [order.id, order]));
    const words = { plant, orders, clock, text, format };
    return {
      plantId: plant.id,
      plan: boardPlan(plan.planId, plan.document),
      plant,
      clock,
      orders,
      unnamed: { shift: text.hours.shiftName, team: text.whatIf.editor.teamName },
      say: (change) => scenarioChangeWords(change, words),
    };
  }, [plan, plant, booked, text, format]);
}
