import { changeBetween } from "@formweek/capacity-model";
import type { Mould, Product, Sheet } from "@formweek/capacity-model";
import type { ChangeSegment, MouldCopy, Plan, RunSegment, StopSegment } from "@formweek/scheduler";
import type { Assembled, OrderDemand } from "./assembled.ts";
import { changeTerms } from "./change-matrix.ts";
import { isoInstant } from "./iso-instant.ts";
import type {
  DocumentChange,
  DocumentMould,
  DocumentRun,
  DocumentSegment,
  DocumentStop,
} from "./plan-document.ts";

/** Names that segments are described with, by id. */
interface Names {
  readonly moulds: ReadonlyMap<string, Mould>;
  readonly products: ReadonlyMap<string, Product>;
  readonly sheets: ReadonlyMap<string, Sheet>;
  readonly demands: ReadonlyMap<string, OrderDemand>;
  readonly finishes: ReadonlyMap<string, number>;
}

const unknownColour = { name: "unknown", hex: "#808080", clear: false };

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> =>
  new Map(records.map((record) => [record.id, record]));

const describeMould = (mould: MouldCopy | null): DocumentMould | null =>
  mould === null ? null : { mouldId: mould.mouldId, copy: mould.copy + 1 };

/** Segments with names, in the plan's order. `finishes`: order id → finish instant of its last lot. */
export function describeSegments(
  assembled: Assembled,
  plan: Plan,
  finishes: ReadonlyMap<string, number>,
): readonly DocumentSegment[] {
  const { plant } = assembled;
  const names: Names = {
    moulds: byId(plant.moulds),
    products: byId(plant.products),
    sheets: byId(plant.sheets),
    demands: new Map(assembled.demands.map((demand) => [demand.order.id, demand])),
    finishes,
  };
  return plan.segments.map((segment) => {
    switch (segment.kind) {
      case "change":
        return describeChange(assembled, segment);
      case "run":
        return describeRun(names, segment);
      case "stop":
        return describeStop(segment);
    }
  });
}

function describeChange(assembled: Assembled, change: ChangeSegment): DocumentChange {
  const spec = assembled.problem.changes[change.changeSpec];
  const seconds = spec === undefined ? 0 : spec.dismountSeconds + spec.mountSeconds + spec.tailSeconds;
  return {
    kind: "change",
    lineId: change.lineId,
    start: isoInstant(change.start),
    end: isoInstant(change.end),
    mountStart: isoInstant(change.mountStart),
    tailStart: isoInstant(change.tailStart),
    stripping: change.stripping,
    teamId: change.teamId,
    trolleyId: change.trolleyId,
    fromSetupId: change.fromSetupId,
    toSetupId: change.toSetupId,
    mouldOut: describeMould(change.mouldOut),
    mouldIn: describeMould(change.mouldIn),
    minutes: Math.round(seconds / 6) / 10,
    scrapKg: spec?.scrapKg ?? 0,
    tasks: tasksOf(assembled, change),
  };
}

/** The setter's task list, worked out again from the states that the change joins. */
function tasksOf(assembled: Assembled, change: ChangeSegment): DocumentChange["tasks"] {
  const { plant, problem, states } = assembled;
  const stateOf = (setupId: string | null) =>
    states[problem.setups.findIndex((setup) => setup.id === setupId)];
  const [from, to] = [stateOf(change.fromSetupId), stateOf(change.toSetupId)];
  const line = plant.lines.find((record) => record.id === change.lineId);
  const terms = line === undefined ? null : changeTerms(plant, line);
  if (from === undefined || to === undefined || terms === null) return [];
  const tasks = changeBetween({ ...terms, from, to })?.tasks ?? [];
  return tasks.map(({ kind, name, minutes, byTeam }) => ({ kind, name, minutes, byTeam }));
}

function describeRun(names: Names, run: RunSegment): DocumentRun {
  const demand = names.demands.get(run.orderId);
  const product = names.products.get(run.productId);
  const sheet = product === undefined ? undefined : names.sheets.get(product.sheetId);
  const dueAt = demand?.order.dueAt ?? 0;
  return {
    kind: "run",
    lineId: run.lineId,
    start: isoInstant(run.start),
    end: isoInstant(run.end),
    orderId: run.orderId,
    lot: run.lot,
    productId: run.productId,
    productName: product?.name ?? run.productId,
    customer: demand?.order.customer ?? "",
    mould: describeMould(run.mould),
    mouldName: run.mould === null ? "" : (names.moulds.get(run.mould.mouldId)?.name ?? run.mould.mouldId),
    sheetId: sheet?.id ?? "",
    sheetName: sheet?.name ?? "",
    colour:
      sheet === undefined
        ? unknownColour
        : { name: sheet.colour.name, hex: sheet.colour.hex, clear: sheet.colour.clear },
    setupId: run.setupId,
    pieces: run.pieces,
    due: isoInstant(dueAt),
    lateSeconds: Math.max(0, (names.finishes.get(run.orderId) ?? dueAt) - dueAt),
  };
}

function describeStop(stop: StopSegment): DocumentStop {
  return {
    kind: "stop",
    lineId: stop.lineId,
    start: isoInstant(stop.start),
    end: isoInstant(stop.end),
    reason: stop.reason,
    orderId: stop.orderId,
    lot: stop.lot,
  };
}
