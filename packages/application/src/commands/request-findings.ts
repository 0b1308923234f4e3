import { appError } from "../errors.ts";
import { orderNotFound, planNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { somethingToPlan } from "./request-solve.ts";
import { type RunWish, runParams, startRun } from "./start-run.ts";
import { standing } from "./take-step.ts";

export interface RemediesWish extends RunWish {
  readonly orderId: string;
  /** Revision of the working plan in which the order is late. */
  readonly expectedRevision: number;
}

/** Budget of a whole search for remedies when none is asked for, seconds. */
const REMEDY_SECONDS = 15;
/** Budget of all plans of a comparison together, seconds. */
const TRADE_OFF_SECONDS = 30;

/** Asks what would help one late order of the working plan. */
export const requestRemedies: UseCase<RemediesWish, { readonly runId: string }> = {
  role: "planner",
  run: (ports, wish, actor) => {
    const { plantId, orderId, expectedRevision } = wish;
    const run = { plantId, params: runParams(wish, REMEDY_SECONDS), requestedBy: actor.id };
    return startRun(ports, run, async (repositories) => {
      const here = await standing(repositories, plantId, expectedRevision);
      if (!here.ok) return here;
      const { planId } = here.value;
      const plan = await repositories.plans.get(plantId, planId);
      if (plan === null) return refused(planNotFound(planId));
      const order = plan.document.orders.find((each) => each.orderId === orderId);
      if (order === undefined) return refused(orderNotFound(orderId));
      if (order.lateSeconds <= 0) return refused(notLate(orderId, order.state));
      return ok({ kind: "remedies", planId, orderId });
    });
  },
};

/** Asks for several plans no one of which beats another. */
export const requestTradeOff: UseCase<RunWish, { readonly runId: string }> = {
  role: "planner",
  run: (ports, wish, actor) => {
    const { plantId } = wish;
    const run = { plantId, params: runParams(wish, TRADE_OFF_SECONDS), requestedBy: actor.id };
    return startRun(ports, run, async (repositories) => {
      const orders = await somethingToPlan(repositories, plantId);
      return orders.ok ? ok({ kind: "trade-off" }) : orders;
    });
  },
};

const notLate = (orderId: string, state: string) =>
  appError(
    "order-not-late",
    {
      title: "This order is not late.",
      cause: `In the working plan order ${orderId} is ${state}.`,
      remedy: "Choose an order that is late.",
    },
    [
      {
        path: "orderId",
        problem: `Order ${orderId} is ${state}.`,
        remedy: "Name an order that is late.",
        cause: { kind: "order not late", orderId },
      },
    ],
  );
