import { clipWorkingTime, spellsOf, subtractWorkingTime, workingTimeOf } from "@formweek/capacity-model";
import type { ChainLink, LateChain } from "../explain/late-chain.ts";
import { whyThen } from "../explain/why-late.ts";
import type { Plan } from "../plan/plan.ts";
import { lotRuleOf } from "../problem/lot-rule.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { ProblemEdit } from "./problem-edit.ts";

/** Longest shift that is put forward, s. The law of the place may allow less. */
const SHIFT_SECONDS = 8 * 3600;
/** Shortest closed spell that is worth a shift, s. */
const LEAST_SHIFT = 2 * 3600;
/** A sheet or a release is asked for so much earlier, s. */
const EARLIER_SECONDS = 24 * 3600;
/** Shortest run that is worth splitting, s: each lot more costs a change. */
const LONG_RUN = 4 * 3600;
/** Smallest lot put forward, as a share of the order. */
const LEAST_LOT_SHARE = 0.2;

/** Closed spells of a line inside a stretch, cut to a shift's length, the longest first. */
function closedShifts(problem: ProblemData, lineId: string, from: number, to: number): [number, number][] {
  const line = problem.lines.find((each) => each.id === lineId);
  if (line === undefined) return [];
  const closed = subtractWorkingTime(
    workingTimeOf([[from, to]]),
    clipWorkingTime(line.workingTime, from, to),
  );
  return spellsOf(closed)
    .map(([start, end]): [number, number] => [start, Math.min(end, start + SHIFT_SECONDS)])
    .filter(([start, end]) => end - start >= LEAST_SHIFT)
    .sort((a, b) => b[1] - b[0] - (a[1] - a[0]) || a[0] - b[0]);
}

function shiftEdits(problem: ProblemData, lineId: string, link: ChainLink): ProblemEdit[] {
  const shifts = closedShifts(problem, lineId, link.from, link.to).slice(0, 2);
  return shifts.map(([from, to]) => ({ kind: "extra shift", lineId, from, to }));
}

/** The stretch, or as much of its beginning as one shift holds. */
const oneShift = (link: ChainLink): { readonly from: number; readonly to: number } => ({
  from: link.from,
  to: Math.min(link.to, link.from + SHIFT_SECONDS),
});

/** Two lots of an order that had to be made in one go, as large as its lots have to be, where two lines may make it. */
function splitEdits({ jobs, pins }: ProblemData, orderId: string): ProblemEdit[] {
  const job = jobs.find((each) => each.orderId === orderId);
  if (job === undefined || job.lots !== undefined || pins.some((pin) => pin.orderId === orderId)) return [];
  const { leastPieces: leastLot, unitPieces } = job.lotSize ?? { leastPieces: 1, unitPieces: 1 };
  const leastPieces = Math.max(leastLot, Math.ceil(job.pieces * LEAST_LOT_SHARE));
  const lots = { most: 2, leastPieces, unitPieces };
  const lines = new Set(job.options.map((option) => option.lineId));
  if (lines.size < 2 || lotRuleOf({ ...job, lots }).most < lots.most) return [];
  return [{ kind: "lots", orderId, ...lots }];
}

/** What would shorten one link of a chain, from the problem's own records. */
function editsForLink(problem: ProblemData, link: ChainLink, next: ChainLink | undefined): ProblemEdit[] {
  switch (link.kind) {
    case "run": {
      const shifts = link.closedSeconds >= LEAST_SHIFT ? shiftEdits(problem, link.lineId, link) : [];
      const pool = problem.lines.find((line) => line.id === link.lineId)?.poolId ?? null;
      const hundredths = problem.lines.find((line) => line.id === link.lineId)?.operatorsHundredths ?? 0;
      const operators: ProblemEdit[] =
        link.operatorSeconds > 0 && pool !== null
          ? [{ kind: "extra operators", poolId: pool, hundredths, ...oneShift(link) }]
          : [];
      const splits = link.workSeconds >= LONG_RUN ? splitEdits(problem, link.orderId) : [];
      return [...shifts, ...operators, ...splits];
    }
    case "line closed":
      return shiftEdits(problem, link.lineId, link);
    case "no operators": {
      const line = problem.lines.find((each) => each.id === link.lineId);
      if (line?.poolId === undefined || line.poolId === null) return [];
      const { poolId, operatorsHundredths: hundredths } = line;
      return [{ kind: "extra operators", poolId, hundredths, ...oneShift(link) }];
    }
    case "setters off":
      return [{ kind: "extra team", ...oneShift(link) }];
    case "change": {
      // a change elsewhere holds the next one by its team alone: the next link is another line's change
      const waits = next?.kind === "change" && next.lineId !== link.lineId;
      return waits ? [{ kind: "extra team", from: link.from, to: link.from + SHIFT_SECONDS }] : [];
    }
    case "mould service":
    case "carrying":
      return [{ kind: "mould copy", mouldId: link.mouldId }];
    case "conditioning":
    case "other work first":
      return [];
  }
}

function editsForRoot({ root }: LateChain, problem: ProblemData): ProblemEdit[] {
  const { start } = problem.horizon;
  switch (root.kind) {
    case "earliest start": {
      const at = Math.max(start, root.at - EARLIER_SECONDS);
      return [{ kind: "earlier start", orderId: root.orderId, at }];
    }
    case "sheet arrival":
      return [{ kind: "earlier sheet", sheetId: root.sheetId, seconds: EARLIER_SECONDS }];
    case "mould out of service":
      return [{ kind: "mould copy", mouldId: root.mouldId }];
    case "line free":
    case "pinned start":
    case "mould arrives":
      return [];
  }
}

/**
 * Edits that could shorten what holds an order: an extra shift where a line on its chain is closed, setters or operators where
 * it waits for them, a copy of a mould that is carried, two lots of a long run, sheets or starts a day earlier. Each once, the earliest link's first;
 * none for an order that the plan does not make.
 */
export function candidateEdits(problem: ProblemData, plan: Plan, orderId: string): readonly ProblemEdit[] {
  const chain = whyThen(problem, plan, orderId);
  if (chain === null) return [];
  const found = [
    ...chain.links.flatMap((link, index) => editsForLink(problem, link, chain.links[index + 1])),
    ...editsForRoot(chain, problem),
  ];
  return [...new Map(found.map((edit) => [JSON.stringify(edit), edit])).values()];
}
