import type { ChangeSegment, MouldCopy, PlanDocument, PlanSegment } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan, secondsOf, type BoardPlan } from "./board-plan.ts";
import { boardRows, pieceOfSegment, rowChoices, type BoardRows } from "./board-rows.ts";

const copies = fc.record({
  mouldId: fc.constantFrom("M1", "M2", "M30"),
  copy: fc.integer({ min: 1, max: 3 }),
});

/** What a change can be: of moulds, of the sheet alone, of a mould by itself, with or without setters. */
const changes = fc.record({
  mouldOut: fc.option(copies),
  mouldIn: fc.option(copies),
  teamId: fc.option(fc.constantFrom("T1", "T2")),
  mountShare: fc.double({ min: 0, max: 1, noNaN: true }),
  tailShare: fc.double({ min: 0, max: 1, noNaN: true }),
});

const plans = fc
  .record({
    lines: fc.integer({ min: 1, max: 5 }),
    runsPerLine: fc.integer({ min: 1, max: 8 }),
    seed: fc.integer({ min: 1, max: 999 }),
    changes: fc.array(changes, { minLength: 40, maxLength: 40 }),
    stopped: fc.array(fc.boolean(), { minLength: 80, maxLength: 80 }),
  })
  .map(({ changes: kinds, stopped, ...size }): BoardPlan => {
    const made = madePlan(size);
    const segments = made.segments.flatMap((segment, at): PlanSegment[] => {
      const kind = kinds[at % kinds.length];
      if (segment.kind === "change" && kind !== undefined) return [withKind(segment, kind)];
      return stopped[at] === true && segment.kind === "run" ? served(segment) : [segment];
    });
    return boardPlan("p", { ...made, segments });
  });

function withKind(change: ChangeSegment, kind: Kind): ChangeSegment {
  const start = secondsOf(change.start);
  const length = secondsOf(change.end) - start;
  const mount = start + Math.floor(length * kind.mountShare);
  const tail = mount + Math.floor((start + length - mount) * kind.tailShare);
  const { mouldOut, mouldIn, teamId } = kind;
  return { ...change, mouldOut, mouldIn, teamId, mountStart: iso(mount), tailStart: iso(tail) };
}

type Kind = typeof changes extends fc.Arbitrary<infer Value> ? Value : never;

/** A run whose first half hour is a service of its mould. */
function served(run: Extract<PlanSegment, { kind: "run" }>): PlanSegment[] {
  const { lineId, orderId, lot, start } = run;
  const end = iso(secondsOf(start) + 1800);
  return [
    { kind: "stop", reason: "service", lineId, orderId, lot, start, end },
    { ...run, start: end },
  ];
}

function iso(instant: number): string {
  return new Date(instant * 1000).toISOString().replace(".000Z", "Z");
}

/** Mould copies that a segment takes, read from the document alone: those of its lot, or those a change moves or keeps. */
function mouldsOf(document: PlanDocument, segment: PlanSegment): readonly string[] {
  const nameOf = (mould: MouldCopy): string => `${mould.mouldId} ${mould.copy}`;
  const runs = document.segments.filter((each) => each.kind === "run");
  if (segment.kind !== "change") {
    const run = runs.find(({ orderId, lot }) => orderId === segment.orderId && lot === segment.lot);
    return run === undefined || run.mould === null ? [] : [nameOf(run.mould)];
  }
  const moved = [segment.mouldOut, segment.mouldIn].filter((mould) => mould !== null);
  if (moved.length > 0) return [...new Set(moved.map(nameOf))];
  const next = runs
    .filter((run) => run.lineId === segment.lineId && secondsOf(run.start) >= secondsOf(segment.end))
    .sort((a, b) => secondsOf(a.start) - secondsOf(b.start))[0];
  return next === undefined || next.mould === null ? [] : [nameOf(next.mould)];
}

/** "row name|segment" of every piece. */
function pairsOf({ rows }: BoardRows): readonly string[] {
  return rows.flatMap(({ resource, pieces }) => {
    const name =
      resource.kind === "line"
        ? resource.line.id
        : resource.kind === "mould"
          ? `${resource.mould.mouldId} ${resource.mould.copy}`
          : resource.teamId;
    return pieces.map(({ segment }) => `${name}|${segment.index}`);
  });
}

function inOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

describe("boardRows", () => {
  it("has every segment exactly once with each resource that it takes, and no other", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const wanted = (names: (segment: PlanSegment) => readonly string[]): readonly string[] =>
          plan.segments
            .flatMap(({ source, index }) => names(source).map((name) => `${name}|${index}`))
            .sort(inOrder);
        const found = rowChoices.map((choice) => [...pairsOf(boardRows(plan, choice))].sort(inOrder));
        expect(found).toEqual([
          wanted(({ lineId }) => [lineId]),
          wanted((segment) => mouldsOf(plan.document, segment)),
          wanted((segment) => (segment.kind === "change" && segment.teamId !== null ? [segment.teamId] : [])),
        ]);
      }),
    );
  });

  it("keeps pieces within their segments, in order and apart, and finds each again", () => {
    fc.assert(
      fc.property(plans, fc.constantFrom(...rowChoices), (plan, choice) => {
        const laidOut = boardRows(plan, choice);
        laidOut.rows.forEach((row, rowIndex) => {
          expect(row.index).toBe(rowIndex);
          row.pieces.forEach((piece, place) => {
            const { segment, start, end } = piece;
            expect(segment.start <= start && start <= end && end <= segment.end).toBe(true);
            expect(start).toBeGreaterThanOrEqual(row.pieces[place - 1]?.end ?? -Infinity);
            expect(piece).toMatchObject({ rowIndex, place });
            expect(pieceOfSegment(laidOut, segment.index, rowIndex)).toBe(piece);
          });
        });
      }),
    );
  });

  it("splits a change of moulds where dismounting ends, and gives each part to its mould", () => {
    const made = madePlan({ lines: 1, runsPerLine: 2, seed: 4 });
    const mouldOut = { mouldId: "M99", copy: 2 };
    const segments = made.segments.map((segment) =>
      segment.kind === "change"
        ? { ...segment, mouldOut, mountStart: iso(secondsOf(segment.start) + 300) }
        : segment,
    );
    const plan = boardPlan("p", { ...made, segments });
    const change = plan.segments.find(({ source }) => source.kind === "change");
    if (change === undefined) throw new Error("the made plan has a change between two runs");
    const pieces = boardRows(plan, "moulds").piecesOf.get(change.index) ?? [];
    expect(pieces.map(({ start, end }) => [start, end]).sort(([a = 0], [b = 0]) => a - b)).toEqual([
      [change.start, change.start + 300],
      [change.start + 300, change.end],
    ]);
  });

  it("knows when teams work where the plan tells it", () => {
    const made = madePlan({ lines: 2, runsPerLine: 4, seed: 5 });
    const change = made.segments.find(({ kind }) => kind === "change") as ChangeSegment;
    const segments = made.segments.map((segment) =>
      segment === change ? { ...change, teamId: "T1" } : segment,
    );
    const open: [string, string] = ["2026-11-30T05:00:00Z", "2026-11-30T13:00:00Z"];
    const openOf = (teams: PlanDocument["teams"]) =>
      boardRows(boardPlan("p", { ...made, segments, teams }), "setter teams").rows.find(
        ({ resource }) => resource.kind === "setter team" && resource.teamId === "T1",
      )?.open;
    expect(openOf([{ id: "T1", name: "Early", open: [open] }])).toEqual([
      { start: secondsOf(open[0]), end: secondsOf(open[1]) },
    ]);
    expect(openOf([])).toBeNull();
  });

  it("puts the busiest first and counts no stop as busy", () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const { rows } = boardRows(plan, "setter teams");
        const perTeam = new Map<string, number>();
        for (const { resource, busySeconds } of rows) {
          if (resource.kind !== "setter team") throw new Error("rows of teams only");
          perTeam.set(resource.teamId, (perTeam.get(resource.teamId) ?? 0) + busySeconds);
        }
        const busy = [...perTeam.values()];
        expect(busy).toEqual([...busy].sort((a, b) => b - a));
        for (const row of boardRows(plan, "moulds").rows) {
          const stops = row.pieces.filter(({ segment }) => segment.source.kind === "stop");
          const whole = row.pieces.reduce((sum, { start, end }) => sum + end - start, 0);
          const stopped = stops.reduce((sum, { start, end }) => sum + end - start, 0);
          expect(row.busySeconds).toBe(whole - stopped);
        }
      }),
    );
  });
});
