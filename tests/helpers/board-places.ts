import type { PlanDocument } from "@formweek/contracts";
import type { APIRequestContext, Page } from "@playwright/test";

export const plantPath = "/api/plants/ellerwade";

/** The plan that is worked on. */
export async function latestPlan(
  request: APIRequestContext,
): Promise<{ readonly planId: string; readonly document: PlanDocument }> {
  return (await (await request.get(`${plantPath}/plans/latest`)).json()) as {
    readonly planId: string;
    readonly document: PlanDocument;
  };
}

/** Orders that a line makes in one lot, in the order in which they run. */
export function ordersOfLine({ lots }: PlanDocument, lineId: string): readonly string[] {
  const split = new Set(lots.filter(({ lot }) => lot > 0).map(({ orderId }) => orderId));
  return lots
    .filter((lot) => lot.lineId === lineId && !split.has(lot.orderId))
    .sort((a, b) => Date.parse(a.start) - Date.parse(b.start))
    .map(({ orderId }) => orderId);
}

type Point = readonly [x: number, y: number];

/** Where instants of lines lie on a freshly opened board, which shows the plan's first week; page coordinates. */
export async function boardPlaces(
  page: Page,
  document: PlanDocument,
): Promise<(lineId: string, instant: number) => Point> {
  const box = await page.getByRole("application").boundingBox();
  if (box === null) throw new Error("the board has a place on the page");
  const label = box.width < 640 ? 72 : 122;
  const week = 7 * 86_400_000;
  const perPx = (week * 1.03) / (box.width - label);
  const from = Date.parse(document.horizon.start) - week * 0.015;
  const row = Math.floor(Math.min(80, Math.max(46, (box.height - 52) / document.lines.length)));
  return (lineId, instant) => [
    box.x + label + (instant - from) / perPx,
    box.y + 52 + (document.lines.findIndex(({ id }) => id === lineId) + 0.5) * row,
  ];
}

/** The middle of an order's longest stretch, where a pointer takes it up. */
export function middleOf({ segments }: PlanDocument, orderId: string): Point {
  const runs = segments.filter((segment) => segment.kind === "run" && segment.orderId === orderId);
  const [start, end] = runs
    .map((run): Point => [Date.parse(run.start), Date.parse(run.end)])
    .reduce((best, run) => (run[1] - run[0] > best[1] - best[0] ? run : best), [0, 0]);
  return [(start + end) / 2, end - start];
}
