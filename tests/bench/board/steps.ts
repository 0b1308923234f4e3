import { performance } from "node:perf_hooks";
import type { PlanDocument, PlanEdit, PlanResponse, WorkingPlanResponse } from "@formweek/contracts";
import type { FigureSheet } from "../plans/figure.ts";
import type { BenchBrowser } from "../../services/open-browser.ts";
import { quantile } from "./quantile.ts";

const steps = 30;
const plantPath = "/api/plants/ellerwade";

/** 30 mixed edits of the demo's plan, taken back and done again one by one: each plan must come back byte for byte. */
export async function measureSteps(sheet: FigureSheet, { url }: BenchBrowser): Promise<void> {
  const get = async (path: string): Promise<string> => (await fetch(`${url}${plantPath}${path}`)).text();
  const post = async (path: string, body: object): Promise<number> => {
    const { revision } = JSON.parse(await get("/working-plan")) as WorkingPlanResponse;
    const answer = await fetch(`${url}${plantPath}/working-plan/${path}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ revision, ...body }),
    });
    return answer.status;
  };
  const plans = [await get("/plans/latest")];
  const editMs: number[] = [];
  const kinds = new Set<string>();
  for (let attempt = 0; plans.length <= steps && attempt < 10 * steps; attempt += 1) {
    const last = plans.at(-1) ?? "";
    const { document } = JSON.parse(last) as PlanResponse;
    const edit = anyEdit(document, attempt);
    if (edit === null) continue;
    const began = performance.now();
    const status = await post("edits", { edit });
    if (status !== 200) continue;
    editMs.push(performance.now() - began);
    const after = await get("/plans/latest");
    if (after === last) continue;
    kinds.add(edit.kind);
    plans.push(after);
  }
  if (plans.length <= steps) throw new Error(`Only ${plans.length - 1} edits of the demo's plan were taken.`);
  let same = 0;
  for (let place = steps - 1; place >= 0; place -= 1) {
    await post("undo", {});
    if ((await get("/plans/latest")) === plans[place]) same += 1;
  }
  for (let place = 1; place <= steps; place += 1) {
    await post("redo", {});
    if ((await get("/plans/latest")) === plans[place]) same += 1;
  }
  const part = `steps, ${steps} edits (${[...kinds].toSorted((a, b) => (a < b ? -1 : 1)).join(", ")})`;
  sheet.add({ part, name: `plans as before, of ${2 * steps}`, value: same, unit: "" });
  sheet.add({ part, name: "edit on the server, median", value: quantile(editMs, 0.5), unit: "ms" });
}

/** An edit of a plan, another for each attempt; null where the plan has nothing for it. */
function anyEdit({ lots, unplanned, orders }: PlanDocument, attempt: number): PlanEdit | null {
  const spread = <T>(list: readonly T[]): T | undefined => list[(attempt * 7919) % list.length];
  const lot = spread(lots);
  const out = unplanned.find(({ reasons }) => reasons.some(({ code }) => code === "taken-out"));
  if (lot === undefined) return null;
  const { orderId, lot: number, lineId, pieces } = lot;
  const onLine = lots.filter((each) => each.lineId === lineId && each.orderId !== orderId);
  const next = spread(onLine);
  const before = next === undefined ? null : { orderId: next.orderId, lot: next.lot };
  switch (attempt % 5) {
    case 0:
      return { kind: "take out", orderId };
    case 1:
      return out === undefined ? null : { kind: "put back", orderId: out.orderId };
    case 2:
      return { kind: "split", orderId, lot: number, pieces: roundHalf(pieces), lineId, before: null };
    case 3: {
      const split = lots.find(
        (each) => each.lot > 0 && orders.some((order) => order.orderId === each.orderId),
      );
      return split === undefined ? null : { kind: "join", orderId: split.orderId };
    }
    default:
      return { kind: "move", orderId, lot: number, lineId, before };
  }
}

/** About half, in thousands, which packing units divide more often than not. */
function roundHalf(pieces: number): number {
  return Math.max(1, Math.round(pieces / 2000) * 1000);
}
