import type { Plant } from "@formweek/capacity-model";
import type { Offer, PlanDocument, UnderstoodEnquiry } from "@formweek/contracts";
import { useEffect, useMemo, useRef, useState, type JSX } from "react";
import { boardWords } from "../../format/board-words.ts";
import { planNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import { boardRows } from "../../kernels/board-rows.ts";
import { enquiryOrderId, promisePicture } from "../../kernels/promise-picture.ts";
import { rowLayout } from "../../kernels/row-layout.ts";
import { dayMarks, hourMarks } from "../../kernels/time-marks.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { CanvasPen } from "../../render/canvas-pen.ts";
import { drawPlan } from "../../render/draw-board.ts";
import type { Frame } from "../../render/frame.ts";
import { readPalette } from "../../render/palette.ts";
import { boardFont } from "../../render/pen.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useText } from "../../text/text.ts";

const rowPx = 76;
const axisPx = 52;
const noMarks: ReadonlyMap<string, never> = new Map<string, never>();

interface RunPictureProps {
  readonly document: PlanDocument;
  readonly plant: Plant;
  readonly enquiry: UnderstoodEnquiry;
  readonly offer: Offer;
}

/** The run of an offer among its neighbours, drawn as the board draws it. */
export function RunPicture({ document: plan, plant, enquiry, offer }: RunPictureProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const canvasRef = useRef<HTMLCanvasElement>(null);
  const [widthPx, setWidthPx] = useState(0);
  const [look, setLook] = useState(0);
  const picture = useMemo(() => {
    const { productId, productName } = enquiry;
    const sheet = plant.sheets.find(({ id }) => id === offer.parts[0]?.sheetId);
    const colour = sheet?.colour ?? { name: "", hex: "#888888", clear: false };
    return promisePicture(plan, offer, { productId, productName, colour });
  }, [plan, plant, enquiry, offer]);
  const rows = useMemo(() => boardRows(picture.plan, "lines"), [picture]);
  const heightPx = axisPx + rows.rows.length * rowPx;

  useEffect(() => {
    const canvas = canvasRef.current;
    if (canvas === null) return;
    const again = (): void => setLook((before) => before + 1);
    const sizes = new ResizeObserver(() => setWidthPx(canvas.clientWidth));
    sizes.observe(canvas);
    const themes = new MutationObserver(again);
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    void Promise.all(Object.values(boardFont).map((font) => document.fonts.load(font.css))).then(again);
    return () => {
      sizes.disconnect();
      themes.disconnect();
    };
  }, []);

  useEffect(() => {
    const canvas = canvasRef.current;
    const context = canvas?.getContext("2d", { alpha: false });
    if (canvas === null || context === null || context === undefined || widthPx === 0) return;
    const density = window.devicePixelRatio;
    canvas.width = Math.round(widthPx * density);
    canvas.height = Math.round(heightPx * density);
    const layout = rowLayout({ widthPx, heightPx }, rows.rows.length);
    const secondsPerPx = (picture.endAt - picture.startAt) / Math.max(1, widthPx - layout.labelWidthPx);
    const clock = zoneClock(plan.plant.timeZone);
    const days = dayMarks(clock, picture.startAt, picture.endAt);
    const frame: Frame = {
      plan: picture.plan,
      rows,
      layout,
      view: { startAt: picture.startAt, secondsPerPx, scrollPx: 0 },
      palette: readPalette(canvas),
      words: boardWords(picture.plan, {
        ...{ names: planNames(plant, text), text, format },
        ...{ held: noMarks, promised: noMarks },
      }),
      days,
      shifts: hourMarks(clock, days, hoursApart(secondsPerPx)),
      now: nowSeconds(),
      frozenUntil: null,
      kept: null,
      held: noMarks,
      promised: noMarks,
      hover: null,
      carry: null,
      selectedIndex: null,
      selectedOrderId: enquiryOrderId,
      lineChoice: null,
      selectedGap: null,
      isFocused: false,
    };
    drawPlan(new CanvasPen(context, density), frame);
  }, [format, heightPx, look, picture, plan, plant, rows, text, widthPx]);

  const { promise } = text;
  return (
    <figure className="run-picture">
      <figcaption className="unseen">{promise.picture}</figcaption>
      <canvas
        ref={canvasRef}
        role="img"
        style={{ height: heightPx }}
        aria-label={promise.pictureText({
          line: rows.rows
            .map(({ resource }) => (resource.kind === "line" ? resource.line.name : ""))
            .join(", "),
          start: format.instant(Math.round(picture.startAt)),
          end: format.instant(Math.round(picture.endAt)),
          before: picture.before ?? promise.nothingBeside,
          after: picture.after ?? promise.nothingBeside,
        })}
      />
      <p className="hint">{promise.pictureHint}</p>
    </figure>
  );
}

/** Hours between marks so that their words have room. */
function hoursApart(secondsPerPx: number): number {
  return [1, 2, 4, 6].find((hours) => (hours * 3600) / secondsPerPx > 52) ?? 12;
}
