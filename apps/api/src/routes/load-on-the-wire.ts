import {
  isoInstant,
  type LoadFindings,
  type LoadOrders,
  type LoadRow,
  type LoadView,
  type Relief,
  type ResourceFinding,
} from "@formweek/application";
import { WHOLE_UNIT, type Bucket, type ResourceLoad } from "@formweek/capacity-model";

/** Orders without load that one answer names. */
const MOST_UNPLACED = 50;

const bucketOnTheWire = ({ label, start, end }: Bucket) => ({
  label,
  start: isoInstant(start),
  end: isoInstant(end),
});

/** A view of the load as the interface writes it: one list of figures a part, in seconds of one unit. */
export function loadOnTheWire({ window, buckets, rows, unplaced, ...view }: LoadView) {
  return {
    ...view,
    window: { start: isoInstant(window.start), end: isoInstant(window.end) },
    buckets: buckets.map(bucketOnTheWire),
    resources: rows.map(rowOnTheWire),
    unplaced: unplaced.slice(0, MOST_UNPLACED).map((each) => ({ ...each })),
    unplacedCount: unplaced.length,
  };
}

function rowOnTheWire({ hours, loads }: LoadRow) {
  const list = (pick: (load: ResourceLoad) => number): number[] =>
    loads.map((load) => pick(load) / WHOLE_UNIT);
  return {
    id: hours.id,
    units: hours.units / WHOLE_UNIT,
    run: list(({ run }) => run),
    change: list(({ change }) => change),
    stop: list(({ stop }) => stop),
    idle: list(({ idle }) => idle),
    closed: list(({ closed }) => closed),
    beyond: list(({ overload }) => overload),
    outside: list(({ outside }) => outside),
    share: loads.map(({ share }) => rounded(share)),
    basis: loads.map(({ basis }) => basis),
  };
}

/** A share to a hundredth of a per cent, to keep answers short. */
const rounded = (share: number | null): number | null =>
  share === null ? null : Math.round(share * 10_000) / 10_000;

/** The orders behind a load. */
export function loadOrdersOnTheWire({ orders, total }: LoadOrders) {
  return {
    total,
    orders: orders.map(({ orderId, order, run, change, basis }) => ({
      orderId,
      order:
        order === null
          ? null
          : {
              customer: order.customer,
              productId: order.productId,
              pieces: order.pieces,
              due: isoInstant(order.dueAt),
            },
      runSeconds: run / WHOLE_UNIT,
      changeSeconds: change / WHOLE_UNIT,
      basis,
    })),
  };
}

/** Bottleneck and warnings. */
export function loadFindingsOnTheWire({ bottleneck, resources, sheets }: LoadFindings) {
  return {
    bottleneck:
      bottleneck === null
        ? null
        : {
            ...findingOnTheWire(bottleneck),
            orders: bottleneck.orders.map(({ orderId, amount }) => ({
              orderId,
              seconds: amount / WHOLE_UNIT,
            })),
            orderCount: bottleneck.orderCount,
          },
    resources: resources.map(findingOnTheWire),
    sheets: sheets.map(({ sheetId, at, missingKg, nextArrivalAt }) => ({
      sheetId,
      at: isoInstant(at),
      missingKg: Math.round(missingKg),
      nextArrivalAt: nextArrivalAt === null ? null : isoInstant(nextArrivalAt),
    })),
  };
}

function findingOnTheWire({ kind, id, units, weeks, worst, beyond, reliefs }: ResourceFinding) {
  return {
    kind,
    id,
    units: units / WHOLE_UNIT,
    weeks: weeks.map(({ bucket, load }) => ({
      ...bucketOnTheWire(bucket),
      neededSeconds: (load.committed + load.overload) / WHOLE_UNIT,
      attainableSeconds: (load.committed + load.available) / WHOLE_UNIT,
      share: rounded(load.share),
      basis: load.basis,
    })),
    worst: weeks.indexOf(worst),
    beyondSeconds: beyond / WHOLE_UNIT,
    reliefs: reliefs.map(reliefOnTheWire),
  };
}

function reliefOnTheWire(relief: Relief) {
  const gain = {
    gainedSeconds: relief.gained / WHOLE_UNIT,
    shareBefore: rounded(relief.shareBefore),
    shareAfter: rounded(relief.shareAfter),
  };
  if (relief.kind === "copy") return { kind: relief.kind, copies: relief.copies, ...gain };
  const { shift, span } = relief;
  return {
    kind: relief.kind,
    name: shift.name,
    start: isoInstant(span.start),
    end: isoInstant(span.end),
    lineId: shift.lineIds[0] ?? null,
    ...gain,
  };
}
