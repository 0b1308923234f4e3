import type { Page } from "@playwright/test";
import type { FigureSheet } from "../plans/figure.ts";
import type { BenchBrowser } from "../../services/open-browser.ts";
import { quantile } from "./quantile.ts";

const loads = 7;

interface Start {
  readonly paintMs: number;
  readonly readyMs: number;
}

/** First paint and the first frame with the board on it, from the start of the navigation, nothing cached. */
export async function measureStart(sheet: FigureSheet, browser: BenchBrowser): Promise<void> {
  const starts: Start[] = [];
  for (let load = 0; load < loads; load += 1) starts.push(await browser.withPage(oneStart));
  const part = `start on the demo, ${loads} loads`;
  const figures = [
    ["first paint", starts.map(({ paintMs }) => paintMs)],
    ["board ready", starts.map(({ readyMs }) => readyMs)],
  ] as const;
  for (const [name, values] of figures) {
    sheet.add({ part, name: `${name}, median (aim 1000)`, value: quantile(values, 0.5), unit: "ms" });
    sheet.add({ part, name: `${name}, worst`, value: Math.max(...values), unit: "ms" });
  }
}

async function oneStart(page: Page): Promise<Start> {
  await page.goto("/");
  return page.evaluate(
    () =>
      new Promise<Start>((resolve) => {
        const look = (): void => {
          const canvas = document.querySelector("canvas");
          const dot = canvas?.getContext("2d")?.getImageData(canvas.width >> 1, 10, 1, 1).data;
          // The canvas is black until the board has been drawn on it.
          const isDrawn = dot !== undefined && canvas !== null && canvas.width > 400 && dot[0] !== 0;
          const paint = performance.getEntriesByName("first-contentful-paint")[0];
          if (isDrawn && paint !== undefined)
            resolve({ paintMs: paint.startTime, readyMs: performance.now() });
          else requestAnimationFrame(look);
        };
        look();
      }),
  );
}
