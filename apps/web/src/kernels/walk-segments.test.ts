import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { boardRows, pieceOfSegment, rowChoices, type RowPiece } from "./board-rows.ts";
import { walkSegments } from "./walk-segments.ts";

const document = madePlan({ lines: 5, runsPerLine: 8, seed: 11 });
const plan = boardPlan("p", document);
const rows = boardRows(plan, "lines");
const byMould = boardRows(plan, "moulds");
const byTeam = boardRows(plan, "setter teams");

describe("walkSegments", () => {
  it("reaches every run and change of a row from its first, in order of time", () => {
    for (const laidOut of [rows, byMould, byTeam]) {
      const reached: RowPiece[] = [];
      for (
        let at = walkSegments(laidOut, null, "later");
        at !== null;
        at = walkSegments(laidOut, at, "later")
      )
        reached.push(at);
      expect(reached).toEqual(laidOut.rows[0]?.pieces);
    }
  });

  it("comes back by the opposite step", () => {
    for (const choice of rowChoices) {
      const laidOut = boardRows(plan, choice);
      const pieces = laidOut.rows.at(-1)?.pieces ?? [];
      expect(pieces.length).toBeGreaterThan(0);
      for (const piece of pieces) {
        const next = walkSegments(laidOut, piece, "later");
        if (next !== null) expect(walkSegments(laidOut, next, "earlier")).toBe(piece);
      }
    }
  });

  it("goes to the neighbouring line at about the same time, and stops at the last", () => {
    const from = rows.rows[2]?.pieces[4] ?? null;
    const below = walkSegments(rows, from, "line below");
    expect(below?.rowIndex).toBe(3);
    expect(walkSegments(rows, rows.rows[4]?.pieces[0] ?? null, "line below")).toBeNull();
    expect(walkSegments(rows, rows.rows[0]?.pieces[0] ?? null, "line above")).toBeNull();
  });

  it("visits every late order once before it starts over", () => {
    for (const laidOut of [rows, byMould]) {
      const first = walkSegments(laidOut, null, "next late");
      const seen = new Set<number>();
      let at = first;
      while (at !== null && !seen.has(at.segment.index)) {
        seen.add(at.segment.index);
        at = walkSegments(laidOut, at, "next late");
      }
      expect(seen.size).toBe(document.summary.late);
      expect(at).toBe(first);
    }
  });

  it("visits the changes for late orders where rows have no runs", () => {
    const late = walkSegments(byTeam, null, "next late");
    const run = plan.segments[(late?.segment.index ?? 0) + 1];
    expect(late?.segment.source.kind).toBe("change");
    expect(run?.source.kind === "run" && run.source.lateSeconds > 0).toBe(true);
    const back = walkSegments(byTeam, walkSegments(byTeam, late, "next late"), "previous late");
    expect(back).toBe(late);
    expect(pieceOfSegment(byTeam, run?.index ?? 0)).toBeNull();
  });

  it("answers nothing on an empty plan", () => {
    const empty = boardPlan("e", { ...document, segments: [], orders: [] });
    for (const choice of rowChoices) {
      expect(walkSegments(boardRows(empty, choice), null, "later")).toBeNull();
      expect(walkSegments(boardRows(empty, choice), null, "next late")).toBeNull();
    }
  });
});
