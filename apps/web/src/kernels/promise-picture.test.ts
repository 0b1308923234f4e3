import type { Offer, PromisedPart } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { secondsOf } from "./board-plan.ts";
import { enquiryOrderId, promisePicture } from "./promise-picture.ts";
import { surenessMarks } from "./sureness-marks.ts";
import { wireText } from "./wall-text.ts";

const document = madePlan({ lines: 2, runsPerLine: 4, seed: 3 });
const [lineId = "", otherLine = ""] = document.lines.map(({ id }) => id);
const runs = document.segments.flatMap((segment) =>
  segment.kind === "run" && segment.lineId === lineId ? [segment] : [],
);
const [first, second] = runs;
if (first === undefined || second === undefined) throw new Error("the made-up plan has too few runs");

/** Behind the first run: the second and all after it make way by five hours. */
const changeStart = secondsOf(first.end);
const part: PromisedPart = {
  pieces: 1000,
  goodPieces: 980,
  lineId,
  lineName: "Line",
  mould: { mouldId: "M", copy: 1 },
  mouldName: "Mould",
  sheetId: "S",
  sheetName: "Sheet",
  start: wireText(changeStart + 1800),
  end: wireText(changeStart + 4 * 3600),
  finish: wireText(changeStart + 4 * 3600),
  promised: wireText(changeStart + 4 * 3600),
  shift: null,
  rate: { cyclesPerMin: 20, piecesPerHour: 300, basis: { kind: "proven", reports: 3 } },
  change: {
    start: wireText(changeStart),
    end: wireText(changeStart + 1800),
    minutes: 30,
    teamId: null,
    teamName: null,
    mouldIn: null,
    mouldOut: null,
  },
};
const later = (iso: string): string => wireText(secondsOf(iso) + 5 * 3600);
const moved: Offer["moved"] = runs.slice(1).map((run) => ({
  orderId: run.orderId,
  lot: run.lot,
  lineId,
  startBefore: run.start,
  start: later(run.start),
  endBefore: run.end,
  end: later(run.end),
}));
const look = { productId: "P", productName: "Product", colour: first.colour };

describe("promisePicture", () => {
  const picture = promisePicture(document, { parts: [part], moved }, look);
  const [line] = picture.plan.lines;
  const segments = line?.segments ?? [];

  it("has the offer's lines alone", () => {
    expect(picture.plan.lines.map(({ id }) => id)).toEqual([lineId]);
    expect(otherLine).not.toBe(lineId);
  });

  it("puts the run with its change between its neighbours, which make way; nothing overlaps", () => {
    const own = segments.filter(({ source }) => source.kind === "run" && source.orderId === enquiryOrderId);
    expect(own[0]?.start).toBe(secondsOf(part.start));
    expect(own.at(-1)?.end).toBe(secondsOf(part.end));
    expect([picture.before, picture.after]).toEqual([first.orderId, second.orderId]);
    const next = segments.find(({ source }) => source.kind === "run" && source.orderId === second.orderId);
    expect(next?.start).toBe(secondsOf(second.start) + 5 * 3600);
    for (const [place, segment] of segments.entries())
      expect(segment.end).toBeLessThanOrEqual(segments[place + 1]?.start ?? Infinity);
  });

  it("shows what is around it", () => {
    expect(picture.startAt).toBeLessThan(changeStart);
    expect(picture.endAt).toBeGreaterThan(secondsOf(part.end));
  });
});

describe("surenessMarks", () => {
  it("keeps marks within the scale, in order of time, also when all are one instant", () => {
    const marks = surenessMarks({ promised: 50_000, wanted: 90_000, at80: 40_000, at95: null });
    expect(marks.map(({ kind }) => kind)).toEqual(["at80", "promised", "wanted"]);
    for (const { share } of marks) expect(share > 0 && share < 1).toBe(true);
    const [one, two] = surenessMarks({ promised: 7, wanted: null, at80: 7, at95: null });
    expect([one?.share, two?.share]).toEqual([0.5, 0.5]);
  });
});
