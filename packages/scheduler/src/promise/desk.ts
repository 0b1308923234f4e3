import { fault } from "../problem/fault.ts";
import type { Job, ProblemData } from "../problem/problem-data.ts";
import { jobFaults } from "../problem/validate-jobs.ts";
import type { ProblemFault } from "../result.ts";
import { simulate } from "../simulate/simulate.ts";
import type { FaultySimulation, Simulation, SimulationParams } from "../simulate/simulation.ts";
import { simulationFaults } from "../simulate/spreads.ts";
import type { Work } from "../work/work.ts";
import { firstPart } from "./first-part.ts";
import { oneLot, type OneLot } from "./one-lot.ts";
import type {
  FaultyOrder,
  FirstPartAnswer,
  MovedRun,
  OpenDesk,
  OrderLimit,
  PromiseAnswer,
  PromisedOrder,
  SplitAnswer,
} from "./promise.ts";
import { planOf, promisedOrder } from "./promised-order.ts";
import { splitOverLines } from "./split-over-lines.ts";
import { lastEnds, type Standing } from "./standing.ts";
import { InsertionRoom, type Insertion } from "./insertion.ts";

function faultsOfOrder(data: ProblemData, order: Job): readonly ProblemFault[] {
  const faults = jobFaults({ ...data, jobs: [order] });
  if (!data.jobs.some(({ orderId }) => orderId === order.orderId)) return faults;
  const text = `There is an order ${order.orderId} already.`;
  return [...faults, fault("duplicate-order", order.orderId, text, "Give the new order an id of its own.")];
}

/** Orders to displace that are not there. */
function unknownOrders({ jobs }: ProblemData, orderIds: ReadonlySet<string>): readonly ProblemFault[] {
  const known = new Set(jobs.map(({ orderId }) => orderId));
  return [...orderIds]
    .filter((id) => !known.has(id))
    .map((id) =>
      fault("unknown-order", id, `There is no order ${id} to displace.`, "Choose orders of the plan."),
    );
}

function faulty(faults: readonly ProblemFault[]): FaultyOrder | null {
  return faults.length > 0 ? { status: "faulty-order", faults } : null;
}

function promised(room: InsertionRoom, insertion: Insertion): PromisedOrder {
  const promise = promisedOrder(insertion, (next) => deskOf(new InsertionRoom(next), []));
  room.giveBack(insertion);
  return promise;
}

function answerOf(room: InsertionRoom, result: OneLot): PromiseAnswer {
  if (result.kind === "placed") return { status: "promised", promise: promised(room, result.insertion) };
  return { status: "refused", reasons: result.reasons, decodes: result.decodes };
}

function* splitAnswer(room: InsertionRoom, order: Job): Work<SplitAnswer> {
  const wrong = faulty(faultsOfOrder(room.standing.problem.data, order));
  if (wrong !== null) return wrong;
  const split = yield* splitOverLines(room, order);
  if (split.kind === "none") return { status: "none", reason: split.reason };
  return { status: "promised", promise: promised(room, split.insertion), earlierBySeconds: split.earlierBy };
}

function* firstPartAnswer(room: InsertionRoom, order: Job, by: number): Work<FirstPartAnswer> {
  const { data, origin } = room.standing.problem;
  const wrong = faulty([
    ...faultsOfOrder(data, order),
    ...(Number.isSafeInteger(by)
      ? []
      : [fault("wanted-instant", order.orderId, `${by} is no instant.`, "Give it in whole seconds.")]),
  ]);
  if (wrong !== null) return wrong;
  const part = yield* firstPart(room, order, by - order.conditioningSeconds - origin);
  if (part.kind === "none") return { status: "none", reason: part.reason };
  const promise = promised(room, part.insertion);
  if (part.kind === "whole") return { status: "whole", promise };
  const finish = (end: number): number => origin + end + order.conditioningSeconds;
  return {
    status: "promised",
    promise,
    first: { pieces: part.first.pieces, finish: finish(part.first.end) },
    rest: { pieces: part.rest.pieces, finish: finish(part.rest.end) },
  };
}

function* simulation(standing: Standing, params: SimulationParams): Work<Simulation | FaultySimulation> {
  const { problem, sequences, latestEnd: by } = standing;
  const faults = simulationFaults(problem.data, params);
  if (faults.length > 0) return { status: "faulty-simulation", faults };
  return yield* simulate({ problem, sequences, end: lastEnds(problem, standing), by }, params);
}

function limitOf(standing: Standing, orderId: string): OrderLimit | null {
  const { data, origin } = standing.problem;
  const job = data.jobs.findIndex((each) => each.orderId === orderId);
  const end = job < 0 ? -1 : lastEnds(standing.problem, standing)[job]!;
  if (end < 0) return null;
  const { conditioningSeconds } = data.jobs[job]!;
  const instant = (at: number): number => origin + at + conditioningSeconds;
  return { by: instant(standing.latestEnd[job]!), finish: instant(end) };
}

/** Opens the desk on a plan that stands in the room. */
export function deskOf(room: InsertionRoom, retimed: readonly MovedRun[]): OpenDesk {
  const { standing } = room;
  const { problem, sequences, objective } = standing;
  const { data } = problem;
  return {
    status: "open",
    problem: data,
    objective,
    retimed,
    limitOf: (orderId) => limitOf(standing, orderId),
    plan: () => planOf(problem, sequences),
    promise: (order) => faulty(faultsOfOrder(data, order)) ?? answerOf(room, oneLot(room, order)),
    splitOverLines: (order) => splitAnswer(room, order),
    firstPart: (order, by) => firstPartAnswer(room, order, by),
    displacing: (order, orderIds) =>
      faulty([...faultsOfOrder(data, order), ...unknownOrders(data, orderIds)]) ??
      answerOf(room, oneLot(room, order, orderIds)),
    simulate: (params) => simulation(standing, params),
  };
}
