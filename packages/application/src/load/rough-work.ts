import {
  WHOLE_UNIT,
  ordersToMake,
  roughCut,
  workingTimeOf,
  type Order,
  type Plant,
  type PlannedWork,
  type PlantHours,
  type RoughCut,
  type RoughDemand,
  type RoughWork,
  type TimeWindow,
} from "@formweek/capacity-model";
import type { PlanDocument } from "../planning/plan-document.ts";
import { ExpectedChanges } from "./expected-change.ts";
import { WorkByResource } from "./planned-work.ts";
import type { PlantWays } from "./product-ways.ts";

export interface RoughInput {
  readonly plant: Plant;
  readonly orders: readonly Order[];
  readonly document: PlanDocument | null;
  readonly ways: PlantWays;
  readonly hours: PlantHours;
  readonly planned: WorkByResource<PlannedWork>;
  readonly window: TimeWindow;
}

/** The orders, or what is left of them, that have no place in the plan, laid roughly over the weeks before they are due. */
export function roughCutOf(input: RoughInput): RoughCut {
  const { plant, hours, planned, window } = input;
  const taken = (kind: "line" | "team", id: string) =>
    workingTimeOf(planned.of(kind, id).map(({ start, end }): [number, number] => [start, end]));
  return roughCut({
    demands: demandsOf(input),
    lines: plant.lines.map(({ id }) => ({ id, workingTime: hours.line(id), planned: taken("line", id) })),
    teams: plant.setterTeams.map(({ id }) => ({
      id,
      workingTime: hours.team(id),
      planned: taken("team", id),
    })),
    window,
  });
}

/** Pieces to form that the plan does not have; each product's options are worked out once. */
function demandsOf({ plant, orders, document, ways }: RoughInput): readonly RoughDemand[] {
  const inPlan = new Map<string, number>();
  for (const { orderId, pieces } of document?.lots ?? [])
    inPlan.set(orderId, (inPlan.get(orderId) ?? 0) + pieces);
  const toMake = new Map(ordersToMake(orders, plant.products).map((made) => [made.orderId, made]));
  const left = orders.flatMap((order) => {
    const pieces = (toMake.get(order.id)?.grossPieces ?? 0) - (inPlan.get(order.id) ?? 0);
    return pieces > 0 ? [{ order, pieces }] : [];
  });
  const changes = new ExpectedChanges(
    plant,
    orders.flatMap(({ productId }) => ways.byProduct.get(productId)?.ways[0]?.state ?? []),
  );
  const lines = new Map<string, Plant["lines"][number]>(plant.lines.map((line) => [line.id, line]));
  const products = new Map(plant.products.map((product) => [product.id, product]));
  const options = new Map<string, RoughDemand["options"]>();
  const optionsOf = (productId: string): RoughDemand["options"] => {
    const known = options.get(productId);
    if (known !== undefined) return known;
    const made = (ways.byProduct.get(productId)?.ways ?? []).flatMap(({ state, ...way }) => {
      const line = lines.get(way.lineId);
      if (line === undefined) return [];
      const { machineSeconds, teamSeconds } = changes.into(line, state);
      return [{ ...way, changeSeconds: machineSeconds, teamSeconds }];
    });
    options.set(productId, made);
    return made;
  };
  return left.map(({ order, pieces }) => ({
    orderId: order.id,
    pieces,
    readyBy: order.dueAt - Math.round((products.get(order.productId)?.conditioningHours ?? 0) * 3600),
    earliestStartAt: order.earliestStartAt,
    options: optionsOf(order.productId),
  }));
}

/** The same by resource: a line's share also loads the mould, the line's operators while it runs, and the setter teams. */
export function roughWork({ placements }: RoughCut, plant: Plant): WorkByResource<RoughWork> {
  const works = new WorkByResource<RoughWork>();
  const lines = new Map<string, Plant["lines"][number]>(plant.lines.map((line) => [line.id, line]));
  for (const { orderId, from, to, parts, teams } of placements) {
    for (const { lineId, mouldId, run, change, over } of parts) {
      const span = { over, from, to, orderId };
      const both = [
        { kind: "run", amount: run, ...span },
        { kind: "change", amount: change, ...span },
      ] as const;
      for (const work of both) {
        works.add("line", lineId, work);
        works.add("mould", mouldId, work);
      }
      const line = lines.get(lineId);
      const poolId = line?.operatorPoolId ?? null;
      if (line === undefined || poolId === null) continue;
      const amount = Math.round((run * Math.round(line.operatorsNeeded * WHOLE_UNIT)) / WHOLE_UNIT);
      works.add("pool", poolId, { kind: "run", amount, ...span });
    }
    for (const { teamId, change, over } of teams)
      works.add("team", teamId, { kind: "change", amount: change, over, from, to, orderId });
  }
  return works;
}
