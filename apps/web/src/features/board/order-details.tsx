import type { Plant } from "@formweek/capacity-model";
import type { Hold, PinListResponse, RunSegment } from "@formweek/contracts";
import type { JSX } from "react";
import { Facts, type Fact } from "../../components/facts.tsx";
import { SheetBand } from "../../components/sheet-band.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf, type BoardPlan, type BoardSegment } from "../../kernels/board-plan.ts";
import { useText, type Text } from "../../text/text.ts";
import { EditOrder } from "./edit-order.tsx";
import { GapBeside } from "./gap-beside.tsx";
import { HoldNote } from "./hold-note.tsx";
import { HoldOrder } from "./hold-order.tsx";
import { LateChain } from "./late-chain.tsx";
import { NotYetYours } from "./not-yet-yours.tsx";
import { Remedies } from "./remedies.tsx";
import type { PlanNames } from "../../format/plan-names.ts";
import { useBoardStore } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface OrderDetailsProps {
  readonly plan: BoardPlan;
  readonly orderId: string;
  /** The stretch that was chosen; null when the order as a whole was. */
  readonly run: BoardSegment | null;
  readonly names: PlanNames;
  readonly pins: PinListResponse | undefined;
  /** The hold that it is made for; undefined where it is an order of the book. */
  readonly hold: Hold | undefined;
  /** Undefined until the server has told. */
  readonly plant: Plant | undefined;
}

export function OrderDetails({
  plan,
  orderId,
  run,
  names,
  pins,
  hold,
  plant,
}: OrderDetailsProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const store = useBoardStore();
  const naming = useNaming();
  const { isProvisional } = usePlanEdits();
  const order = plan.orders.get(orderId);
  if (order === undefined) return null;
  const runs = plan.runsOfOrder.get(orderId) ?? [];
  const lots = plan.document.lots.filter((lot) => lot.orderId === orderId).length;
  const late = plan.document.late.find((entry) => entry.orderId === orderId);
  const reasons = plan.document.unplanned.find((entry) => entry.orderId === orderId)?.reasons ?? [];
  return (
    <>
      <h2>
        {text.details.order(orderId)}
        {order.lateSeconds > 0 && (
          <span className="late-words"> · {text.board.late(format.span(order.lateSeconds))}</span>
        )}
      </h2>
      <p className="details-lead">
        {order.productName}
        <br />
        {order.customer}
      </p>
      {run !== null && (
        <Facts facts={[...lotFacts(run, lots, text), ...runFacts(run, names, text, format)]} />
      )}
      {hold !== undefined && <HoldNote hold={hold} />}
      {run !== null && <GapBeside plan={plan} segment={run} />}
      <Facts facts={orderFacts(order, text, format)} />
      {isProvisional ? (
        <NotYetYours />
      ) : (
        <EditOrder key={orderId} plan={plan} orderId={orderId} lot={lotOf(run)} plant={plant} names={names} />
      )}
      {pins !== undefined && !isProvisional && (
        <HoldOrder
          key={`${plan.planId} ${orderId}`}
          plan={plan}
          orderId={orderId}
          lot={lotOf(run)}
          pins={pins}
        />
      )}
      {reasons.length > 0 && (
        <>
          <h3>{text.details.reasons}</h3>
          <ul className="reasons">
            {reasons.map((reason) => (
              <li key={`${reason.code} ${reason.lineId ?? ""}`}>{text.causes.unplanned(reason, naming)}</li>
            ))}
          </ul>
        </>
      )}
      {late !== undefined && (
        <>
          <Remedies plan={plan} orderId={orderId} names={names} />
          <LateChain late={late} />
        </>
      )}
      {runs.length > 0 && (
        <>
          <h3>{text.details.runs}</h3>
          <ul className="run-list">
            {runs.map((segment) => (
              <li key={segment.index}>
                <button
                  type="button"
                  className="text-button"
                  aria-current={segment.index === run?.index}
                  onClick={() => {
                    store.send({ kind: "order sought", orderId });
                    store.send({ kind: "selected", selection: { kind: "segment", index: segment.index } });
                  }}
                >
                  {text.details.run(
                    plan.lines[segment.lineIndex]?.name ?? "",
                    format.instant(segment.start),
                    format.instant(segment.end),
                  )}
                </button>
                {segment.source.kind === "run" && (
                  <span>{amountText(segment.source, lots, text, format)}</span>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function lotOf(run: BoardSegment | null): number | null {
  return run === null || run.source.kind === "change" ? null : run.source.lot;
}

type PlanOrder = NonNullable<ReturnType<BoardPlan["orders"]["get"]>>;

function orderFacts(order: PlanOrder, text: Text, format: Format): readonly Fact[] {
  const { details } = text;
  const facts: Fact[] = [
    {
      name: details.state,
      value: text.states[order.state],
      ...(order.lateSeconds > 0 ? { tone: "late" } : {}),
    },
    { name: details.due, value: format.instant(secondsOf(order.due)) },
  ];
  if (order.finish !== null)
    facts.push({ name: details.finish, value: format.instant(secondsOf(order.finish)) });
  if (order.lateSeconds > 0)
    facts.push({ name: details.lateBy, value: format.span(order.lateSeconds), tone: "late" });
  else if (order.slackSeconds !== null)
    facts.push({ name: details.slack, value: format.span(order.slackSeconds) });
  facts.push({ name: details.pieces, value: format.count(order.pieces) });
  if (order.fromStockPieces > 0)
    facts.push({ name: details.fromStock, value: format.count(order.fromStockPieces) });
  facts.push({ name: details.toMake, value: format.count(order.toMakePieces) });
  if (order.grossPieces !== order.toMakePieces)
    facts.push({ name: details.toForm, value: format.count(order.grossPieces) });
  return facts;
}

/** Pieces of a stretch, and of which lot they are where the order is made in several. */
function amountText(run: RunSegment, lots: number, text: Text, format: Format): string {
  const pieces = text.units.pieces(format.count(run.pieces));
  return lots > 1 ? text.details.piecesOfLot(pieces, format.count(run.lot + 1)) : pieces;
}

function lotFacts({ source }: BoardSegment, lots: number, text: Text): readonly Fact[] {
  if (source.kind === "change" || lots < 2) return [];
  return [{ name: text.details.lot, value: text.details.lotOf(`${source.lot + 1}`, `${lots}`) }];
}

function runFacts(run: BoardSegment, names: PlanNames, text: Text, format: Format): readonly Fact[] {
  const { source } = run;
  const { details } = text;
  const times: readonly Fact[] = [
    { name: details.start, value: format.instant(run.start) },
    { name: details.end, value: format.instant(run.end) },
    { name: details.lasts, value: format.span(run.end - run.start) },
  ];
  if (source.kind === "stop")
    return [{ name: details.state, value: text.board.stop[source.reason] }, ...times];
  if (source.kind === "change") return times;
  return [
    { name: details.mould, value: source.mould === null ? source.mouldName : names.mould(source.mould) },
    { name: details.sheet, value: source.sheetName },
    { name: details.colour, value: <SheetBand colour={source.colour} /> },
    ...times,
    { name: details.thisRun, value: format.count(source.pieces) },
  ];
}
