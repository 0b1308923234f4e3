import { performance } from "node:perf_hooks";
import { assembleProblem, describePlan, ENGINE_VERSION } from "@formweek/application";
import type { PlanDocument } from "@formweek/contracts";
import { generatePlant } from "@formweek/demo-plant";
import { solve, type ProblemData } from "@formweek/scheduler";
import type { Page } from "@playwright/test";
import { boardPlaces, middleOf } from "../../helpers/board-places.ts";
import type { FigureSheet } from "../plans/figure.ts";
import type { BenchBrowser } from "../../services/open-browser.ts";
import { percentOver, quantile } from "./quantile.ts";
import { threadTime } from "./thread-time.ts";

const size = { lines: 40, orders: 2000, seed: 1 };
const searchSeconds = 5;
const lots = 8;
const placesEach = 10;

interface Standing {
  readonly document: PlanDocument;
  readonly problem: ProblemData;
}

/** What one move of the pointer came to. */
interface Answer {
  /** From the pointer's event to the end of the frame that shows what the place comes to. */
  readonly ms: number;
  /** Frames until then; 1: the pointer's own. */
  readonly frames: number;
}

/** From the pointer over a new place to what it would come to on all lines, on 2,000 orders × 40 lines. */
export async function measureDrag(sheet: FigureSheet, browser: BenchBrowser): Promise<void> {
  const standing = planned();
  const { result: answers, ms: threadMs } = await browser.withPage(async (page) => {
    await serve(page, standing);
    const problem = page.waitForResponse(/\/problem$/);
    await page.goto("/");
    await problem;
    await page.getByRole("application").waitFor();
    await page.waitForTimeout(4000);
    return threadTime(page, () => dragged(page, standing.document));
  });
  const part = `drag, ${size.orders} orders × ${size.lines} lines`;
  const ms = answers.map((answer) => answer.ms);
  sheet.add({ part, name: "places answered", value: ms.length, unit: "" });
  sheet.add({ part, name: "answer on the board, median", value: quantile(ms, 0.5), unit: "ms" });
  sheet.add({ part, name: "answer on the board, p95 (aim 100)", value: quantile(ms, 0.95), unit: "ms" });
  sheet.add({ part, name: "answers over 100 ms", value: percentOver(ms, 100), unit: "%" });
  sheet.add({
    part,
    name: "processor time of the page's thread, a place",
    value: threadMs / (lots * placesEach),
    unit: "ms",
  });
  const frames = answers.map((answer) => answer.frames);
  sheet.add({ part, name: "answers after the next frame (aim 0)", value: percentOver(frames, 1), unit: "%" });
}

function planned(): Standing {
  const assembled = assembleProblem({ ...generatePlant(size), pins: [], now: 0 });
  const { problem } = assembled;
  const result = solve(
    problem,
    { seed: size.seed, maxSteps: null, maxMs: searchSeconds * 1000 },
    { monotonicMs: () => performance.now(), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  const origin = { engineVersion: ENGINE_VERSION, seed: size.seed, steps: 0, bound: null };
  const document = JSON.parse(JSON.stringify(describePlan(assembled, result.plan, origin))) as PlanDocument;
  return { document, problem };
}

/** The made-up plan in place of the server's. */
async function serve(page: Page, { document, problem }: Standing): Promise<void> {
  await page.route("**/plans/latest", (route) =>
    route.fulfill({ json: { planId: "made", createdAt: "2026-11-29T10:00:00Z", document } }),
  );
  await page.route("**/problem", (route) => route.fulfill({ json: { sameInputs: true, problem } }));
  await page.route("**/rates", (route) => route.fulfill({ json: [] }));
}

async function dragged(page: Page, document: PlanDocument): Promise<readonly Answer[]> {
  const pointOf = await boardPlaces(page, document);
  const box = await page.getByRole("application").boundingBox();
  if (box === null) throw new Error("the board has a place on the page");
  const isSeen = ([x, y]: readonly [number, number]): boolean =>
    x > box.x + 140 && x < box.x + box.width - 60 && y > box.y + 80 && y < box.y + box.height - 60;
  const seen = document.lots
    .map(({ orderId, lineId }) => pointOf(lineId, middleOf(document, orderId)[0]))
    .filter(isSeen);
  const spread = <T>(list: readonly T[], place: number): T | undefined => list[(place * 7919) % list.length];
  await page.evaluate(watchAnswers);
  await page.waitForTimeout(2000);
  const answers: Answer[] = [];
  for (let lot = 0; lot < lots; lot += 1) {
    const from = spread(seen, lot);
    if (from === undefined) throw new Error("no run is in sight");
    await page.mouse.move(...from);
    await page.mouse.down();
    await page.mouse.move(from[0] + 8, from[1]);
    for (let place = 0; place < placesEach; place += 1) {
      const to = spread(seen, lot * placesEach + place + 1) ?? from;
      // Along its own line and to others by turns: places that a lot does not fit are not answered by a plan.
      await page.mouse.move(to[0], place % 2 === 0 ? from[1] : to[1]);
      await page.waitForTimeout(250);
    }
    answers.push(...(await page.evaluate(takeAnswers)));
    await page.keyboard.press("Escape");
    await page.mouse.up();
  }
  if (answers.length === 0) throw new Error(`No place was answered.`);
  return answers;
}

/** Runs in the page: notes when the pointer moves, and when what the place comes to is said and drawn. */
function watchAnswers(): void {
  const noted = window as unknown as { answers: Answer[] };
  noted.answers = [];
  let moved: number | null = null;
  let frames = 0;
  const count = (): void => {
    frames += 1;
    requestAnimationFrame(count);
  };
  requestAnimationFrame(count);
  addEventListener(
    "pointermove",
    () => {
      moved = performance.now();
      frames = 0;
    },
    { capture: true },
  );
  new MutationObserver(() => {
    if (moved === null || document.querySelector(".effects") === null) return;
    const began = moved;
    moved = null;
    const shownIn = Math.max(1, frames);
    // The frame that is under way, or the next one, draws it; a message comes after it.
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => noted.answers.push({ ms: performance.now() - began, frames: shownIn });
      port2.postMessage(null);
    });
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
}

function takeAnswers(): Answer[] {
  const noted = window as unknown as { answers: Answer[] };
  return noted.answers.splice(0);
}
