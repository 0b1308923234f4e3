import type { Plan } from "@formweek/scheduler";
import { orderState, piecesMade } from "../planning/describe-plan.ts";
import type { Assembled } from "../planning/assembled.ts";
import type { OrderState } from "../planning/plan-document.ts";
import { finishesOf } from "../planning/plan-figures.ts";

/** An order that ends otherwise than in another plan. */
export interface TurnedOrder {
  readonly orderId: string;
  /** Null: the other plan does not know it. */
  readonly from: OrderState | null;
  /** Null: this plan does not know it. */
  readonly to: OrderState | null;
  /** 0: in time; null: not planned, or not known. */
  readonly fromLateSeconds: number | null;
  readonly toLateSeconds: number | null;
}

/** A plan with what it was made for. */
export interface PlanOfInputs {
  readonly assembled: Assembled;
  readonly plan: Plan;
}

interface End {
  readonly state: OrderState;
  readonly lateSeconds: number | null;
}

/** Orders that change between in time, late and not planned, or that only one of two plans knows; those that get worse first. */
export function turnedOrders(from: PlanOfInputs, to: PlanOfInputs): readonly TurnedOrder[] {
  const [before, after] = [endsOf(from), endsOf(to)];
  return [...new Set([...before.keys(), ...after.keys()])]
    .map((orderId): TurnedOrder => {
      const [was, is] = [before.get(orderId) ?? null, after.get(orderId) ?? null];
      return {
        orderId,
        from: was?.state ?? null,
        to: is?.state ?? null,
        fromLateSeconds: was?.lateSeconds ?? null,
        toLateSeconds: is?.lateSeconds ?? null,
      };
    })
    .filter((order) => order.from === null || order.to === null || sideOf(order.from) !== sideOf(order.to))
    .sort(
      (a, b) => worsening(b) - worsening(a) || lateness(b) - lateness(a) || (a.orderId < b.orderId ? -1 : 1),
    );
}

function endsOf({ assembled, plan }: PlanOfInputs): ReadonlyMap<string, End> {
  const [made, finishes] = [piecesMade(plan), finishesOf(plan)];
  return new Map(
    assembled.demands.map((demand): readonly [string, End] => {
      const { id, dueAt } = demand.order;
      const late = Math.max(0, (finishes.get(id) ?? dueAt) - dueAt);
      const state = orderState(demand, made.get(id) ?? 0, late);
      return [id, { state, lateSeconds: sideOf(state) === 2 ? null : late }];
    }),
  );
}

/** 0 in time, 1 late, 2 not planned. */
function sideOf(state: OrderState): 0 | 1 | 2 {
  switch (state) {
    case "on time":
    case "covered by stock":
      return 0;
    case "late":
      return 1;
    case "partly planned":
    case "unplanned":
      return 2;
  }
}

/** An order that is not there is as good as in time. */
const worsening = ({ from, to }: TurnedOrder): number =>
  (to === null ? 0 : sideOf(to)) - (from === null ? 0 : sideOf(from));

const lateness = ({ fromLateSeconds, toLateSeconds }: TurnedOrder): number =>
  (toLateSeconds ?? 0) - (fromLateSeconds ?? 0);
