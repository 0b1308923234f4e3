import type { Page } from "@playwright/test";
import { madePlan } from "../../../apps/web/src/fixtures/made-plan.ts";
import type { FigureSheet } from "../plans/figure.ts";
import type { BenchBrowser } from "../../services/open-browser.ts";
import { percentOver, quantile } from "./quantile.ts";
import { threadTime } from "./thread-time.ts";

const runsPerLine = 50;
const mostLines = 100;
const framesOf = 180;
/** Browsers tell frames to a tenth of a millisecond: a frame on time may read as 16.8 ms. */
const frameMs = 16.7 + 0.15;
const twoFramesMs = 33.3 + 0.15;

/** One gesture, a wheel event a frame. */
interface Gesture {
  readonly name: string;
  /** What the board shows while it is made. */
  readonly span: "week" | "plan";
  readonly wheel: { readonly deltaX?: number; readonly deltaY?: number; readonly ctrlKey?: boolean };
}

const gestures: readonly Gesture[] = [
  { name: "pan, a week", span: "week", wheel: { deltaX: 30 } },
  { name: "zoom, a week", span: "week", wheel: { deltaY: 20, ctrlKey: true } },
  { name: "pan and zoom, whole plan", span: "plan", wheel: { deltaX: 12, deltaY: 20, ctrlKey: true } },
];

interface Frames {
  /** From one frame to the next, ms. */
  readonly betweenMs: readonly number[];
  /** Time in the app's own drawing, a frame, ms. */
  readonly drawnMs: readonly number[];
}

/** Frame times while a board of so many runs is panned and zoomed. */
export async function measureFrames(sheet: FigureSheet, browser: BenchBrowser, runs: number): Promise<void> {
  const lines = Math.min(mostLines, Math.max(1, Math.round(runs / runsPerLine)));
  const document = madePlan({ lines, runsPerLine: Math.ceil(runs / lines), seed: 1 });
  for (const gesture of gestures) {
    const { result, ms } = await browser.withPage(async (page) => {
      await page.route("**/plans/latest", (route) =>
        route.fulfill({ json: { planId: "made", createdAt: "2026-11-29T10:00:00Z", document } }),
      );
      await page.goto("/");
      await page.getByRole("application").waitFor();
      await page.getByRole("combobox", { name: "Time shown" }).selectOption(gesture.span);
      await page.waitForTimeout(1000);
      return threadTime(page, () => framesWhile(page, gesture));
    });
    const { betweenMs, drawnMs } = result;
    const part = `${runs} runs, ${gesture.name}`;
    const add = (name: string, value: number, unit: string): void => sheet.add({ part, name, value, unit });
    add("frame, median", quantile(betweenMs, 0.5), "ms");
    add("frame, p95 (aim 16.7)", quantile(betweenMs, 0.95), "ms");
    add("frames over 16.7 ms", percentOver(betweenMs, frameMs), "%");
    add("frames over 33 ms", percentOver(betweenMs, twoFramesMs), "%");
    add("of it drawing, median", quantile(drawnMs, 0.5), "ms");
    add("processor time of the page's thread, a frame", ms / betweenMs.length, "ms");
  }
}

/** Turns the wheel once a frame, forth and back, and times the frames. */
function framesWhile(page: Page, { wheel }: Gesture): Promise<Frames> {
  return page.evaluate(
    ({ turn, frames }) =>
      new Promise<Frames>((resolve, reject) => {
        const canvas = document.querySelector("canvas");
        if (canvas === null) return reject(new Error("there is no board"));
        const box = canvas.getBoundingClientRect();
        const [clientX, clientY] = [box.left + box.width / 2, box.top + box.height / 2];
        const betweenMs: number[] = [];
        const drawnMs: number[] = [];
        let last: number | null = null;
        const step = (now: number): void => {
          if (last !== null) betweenMs.push(now - last);
          last = now;
          if (betweenMs.length === frames) return resolve({ betweenMs, drawnMs });
          const sign = Math.floor(betweenMs.length / 30) % 2 === 0 ? -1 : 1;
          const [deltaX, deltaY] = [sign * (turn.deltaX ?? 0), sign * (turn.deltaY ?? 0)];
          const shared = { bubbles: true, cancelable: true, clientX, clientY };
          // Callbacks of a frame run in the order in which they were asked for: the board asks for its own between these two.
          let began = 0;
          requestAnimationFrame(() => void (began = performance.now()));
          if (turn.ctrlKey === true)
            canvas.dispatchEvent(new WheelEvent("wheel", { ...shared, deltaY, ctrlKey: true }));
          if (deltaX !== 0) canvas.dispatchEvent(new WheelEvent("wheel", { ...shared, deltaX }));
          requestAnimationFrame(() => void drawnMs.push(performance.now() - began));
          requestAnimationFrame(step);
        };
        requestAnimationFrame(step);
      }),
    { turn: wheel, frames: framesOf },
  );
}
