import type { ProblemFault } from "../result.ts";

/** How a line fails: exponential times between failures, of running alone, and exponential repairs, of the line's working time. */
export interface LineFailures {
  /** Mean running time between two failures (MTBF), s, > 0. */
  readonly meanBetweenSeconds: number;
  /** Mean time to repair (MTTR), s, >= 0. */
  readonly meanRepairSeconds: number;
}

/** What may come otherwise than planned. */
export interface Spreads {
  /** By line id; a line without an entry never fails. */
  readonly failures: ReadonlyMap<string, LineFailures>;
  /**
   * The planned rates allow for failures already: a run without any is then shorter by the availability, MTBF / (MTBF + MTTR), so that
   * it takes as long as planned on average. Else failures come on top.
   */
  readonly failuresInRates: boolean;
  /** Coefficient of variation (standard deviation over mean) of a lot's running time, lognormal with the planned one as mean; >= 0. */
  readonly runVariation: number;
  /** The same of a change's duration. */
  readonly changeVariation: number;
}

export interface SimulationParams {
  /** Plays, a whole number >= 1. */
  readonly runs: number;
  readonly seed: number;
  readonly spreads: Spreads;
  /** Called after every play. */
  readonly onRun?: (done: number) => void;
}

/** How an order came out over all plays. Instants are epoch seconds, conditioning included. */
export interface SimulatedOrder {
  readonly orderId: string;
  /** By when it must be finished. */
  readonly by: number;
  readonly plannedFinish: number;
  /** Share of the plays in which it is finished by then. */
  readonly inTime: number;
  /** Instants by which it is finished in 50, 80 and 95 % of the plays; null where that is after the horizon. */
  readonly finish50: number | null;
  readonly finish80: number | null;
  readonly finish95: number | null;
  /** Mean over the plays that finish it in the horizon; null where none does. */
  readonly meanFinish: number | null;
  /** Share of the plays that do not finish it in the horizon. */
  readonly unfinished: number;
}

/** What became of a plan played many times. */
export interface Simulation {
  readonly status: "simulated";
  readonly runs: number;
  /** Planned orders, by id. */
  readonly orders: readonly SimulatedOrder[];
  /** Orders not finished by their instants in a play, on average. */
  readonly expectedLateOrders: number;
  /** Share of the plays in which an order is finished by an instant; null for one that is not planned. */
  readonly chanceBy: (orderId: string, instant: number) => number | null;
}

export interface FaultySimulation {
  readonly status: "faulty-simulation";
  readonly faults: readonly ProblemFault[];
}
