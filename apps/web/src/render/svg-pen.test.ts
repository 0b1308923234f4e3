import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan, type BoardPlan } from "../kernels/board-plan.ts";
import { boardRows } from "../kernels/board-rows.ts";
import { pictureLayout, type PictureExtent } from "../kernels/picture-layout.ts";
import { rowLayout } from "../kernels/row-layout.ts";
import { viewEndAt } from "../kernels/time-scale.ts";
import { elementsOf, type XmlElement } from "../fixtures/read-xml.ts";
import { boardFont, type Font } from "./pen.ts";
import type { Palette } from "./palette.ts";
import type { Picture } from "./draw-picture.ts";
import { svgOf } from "./picture-files.ts";
import { SvgPen } from "./svg-pen.ts";

const measure = (font: Font, text: string): number => text.length * font.sizePx * 0.45;
const about = { widthPx: 100, heightPx: 50, title: "t", description: "d", language: "en" };

describe("an SVG document", () => {
  it("gives back any text as it was written, whatever markup it looks like", () => {
    // XML 1.0 (fifth edition), section 2.2: characters that a document may hold; line ends are read as one character
    const text = fc
      .string({
        unit: fc.oneof(fc.constantFrom("<", ">", "&", '"', "'", "]]>", "é", "漢", "𝛼"), fc.string()),
      })
      .map((drawn) => drawn.replace(/[^\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, ""))
      .filter((drawn) => drawn !== "");
    fc.assert(
      fc.property(text, (words) => {
        const pen = new SvgPen(measure);
        pen.beginPart(() => words);
        pen.fillText(words, 1, 2);
        pen.endPart();
        const elements = elementsOf(pen.written({ ...about, title: words, description: words }));
        const named = (name: string) => elements.filter((element) => element.name === name);
        expect(named("text").map((element) => element.text)).toEqual([words]);
        expect(named("title").map((element) => element.text)).toEqual([words, words]);
        expect(named("desc").map((element) => element.text)).toEqual([words]);
      }),
    );
  });

  it("holds no character that XML forbids", () => {
    const pen = new SvgPen(measure);
    pen.fillText("a\u0000b\u0008c\ud800d\uffff", 0, 0);
    expect(pen.written(about)).toContain(">a\uFFFDb\uFFFDc\uFFFDd\uFFFD</text>");
  });

  it("keeps the room of each text, whatever font draws it", () => {
    const pen = new SvgPen(measure);
    pen.font = boardFont.line;
    pen.fillText("Line 7", 0, 0);
    const [text] = elementsOf(pen.written(about)).filter(({ name }) => name === "text");
    expect(Number(text?.attributes.get("textLength"))).toBeCloseTo(measure(boardFont.line, "Line 7"), 2);
  });

  it("takes colours, clips and turns back where they were kept", () => {
    const pen = new SvgPen(measure);
    pen.fillStyle = "#111111";
    pen.save();
    pen.fillStyle = "#222222";
    pen.rect(0, 0, 5, 5);
    pen.clip();
    pen.rotate(-Math.PI / 2);
    pen.fillRect(0, 0, 1, 1);
    pen.restore();
    pen.fillRect(0, 0, 2, 2);
    const elements = elementsOf(pen.written(about));
    const rects = elements.filter(({ name }) => name === "rect");
    expect(rects.map(({ attributes, depth }) => [attributes.get("fill"), depth])).toEqual([
      ["#222222", 3],
      ["#111111", 1],
    ]);
    expect(elements.find(({ attributes }) => attributes.get("transform") === "rotate(-90)")).toBeDefined();
  });
});

const palette = new Proxy({} as Palette, { get: (_, name) => (name === "isDark" ? false : "#123456") });

function pictureOf(plan: BoardPlan, extent: PictureExtent): Picture {
  const rows = boardRows(plan, "lines");
  const layout = rowLayout({ widthPx: 1280, heightPx: 500 }, rows.rows.length);
  const seen = {
    layout,
    view: { startAt: plan.startAt + 86_400, secondsPerPx: 300, scrollPx: 60 },
    startAt: plan.startAt,
    endAt: plan.endAt,
  };
  const word = (): string => "word";
  return {
    words: {
      title: "Plant",
      facts: ["Plan of today"],
      legend: {
        run: "run",
        clear: "clear",
        late: "late",
        change: "change",
        pause: "pause",
        closed: "closed",
        due: "due",
        held: "held",
        frozen: "published runs stay",
        promised: "held for a customer",
        now: "now",
      },
    },
    frame: {
      plan,
      rows,
      ...pictureLayout(seen, extent),
      palette,
      words: {
        day: word,
        week: word,
        pieces: word,
        rowLabel: () => ({ name: "Line", shortName: "L" }),
        rowUse: word,
        line: word,
        hours: word,
        late: word,
        stop: word,
        refused: word,
        extraShift: word,
        piece: ({ index, source }) => `${source.kind} ${index}`,
        now: "now",
        frozen: (until) => `published runs stay until ${until}`,
      },
      days: [],
      shifts: [],
      now: 0,
      frozenUntil: null,
      kept: null,
      held: new Set(),
      promised: new Set(),
      lineChoice: null,
      hover: null,
      carry: null,
      selectedIndex: null,
      selectedOrderId: null,
      selectedGap: null,
      isFocused: false,
    },
  };
}

const byText = (a: string, b: string): number => (a < b ? -1 : 1);

const runsNamed = (elements: readonly XmlElement[]): readonly string[] =>
  elements
    .filter(({ name, text }) => name === "title" && text.startsWith("run "))
    .map(({ text }) => text)
    .toSorted(byText);

describe("the board as SVG", () => {
  const plan = boardPlan("made", madePlan({ lines: 12, runsPerLine: 30, seed: 5 }));
  const runs = plan.segments.filter(({ source }) => source.kind === "run");

  it("of the whole plan holds each run once", () => {
    const elements = elementsOf(svgOf(pictureOf(plan, "whole plan"), measure, "en"));
    expect(runsNamed(elements)).toEqual(runs.map(({ index }) => `run ${index}`).toSorted(byText));
  });

  it("marks until when published runs stay, by name, where that lies in the plan's time", () => {
    const picture = pictureOf(plan, "whole plan");
    const named = (frozenUntil: number | null): readonly string[] =>
      elementsOf(svgOf({ ...picture, frame: { ...picture.frame, frozenUntil } }, measure, "en"))
        .filter(({ name, text }) => name === "title" && text.startsWith("published runs stay until"))
        .map(({ text }) => text);
    const until = plan.startAt + 2 * 86_400;
    expect(named(until)).toEqual([`published runs stay until ${until}`]);
    for (const none of [null, plan.startAt, plan.startAt - 86_400]) expect(named(none)).toEqual([]);
  });

  it("of what is in sight holds each run of the time and rows in sight once, and no other", () => {
    const picture = pictureOf(plan, "in sight");
    const { layout, view } = picture.frame;
    const from = view.scrollPx / layout.rowHeightPx;
    const to = from + (layout.heightPx - layout.axisHeightPx) / layout.rowHeightPx;
    const until = viewEndAt(view, layout.widthPx - layout.labelWidthPx);
    const seen = runs.filter(
      (run) => run.lineIndex >= from && run.lineIndex < to && run.end > view.startAt && run.start < until,
    );
    expect(Number.isInteger(from) && Number.isInteger(to)).toBe(true);
    expect(seen.length).toBeGreaterThan(20);
    expect(seen.length).toBeLessThan(runs.length);
    const elements = elementsOf(svgOf(picture, measure, "en"));
    expect(runsNamed(elements)).toEqual(seen.map(({ index }) => `run ${index}`).toSorted(byText));
  });
});
