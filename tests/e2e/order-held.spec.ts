import type { PlanDocument } from "@formweek/contracts";
import { expect, test } from "./app-test.ts";

const plantPath = "/api/plants/ellerwade";

test("an order is held where it runs by keyboard alone, is there in the next plan, and is freed", async ({
  page,
  request,
}) => {
  const latest = async () =>
    (await (await request.get(`${plantPath}/plans/latest`)).json()) as {
      readonly planId: string;
      readonly document: PlanDocument;
    };
  const picture = (): Promise<string> =>
    page.locator("canvas").evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
  await page.goto("/");
  const details = page.getByRole("complementary", { name: "Details" });
  const place = details.getByRole("region", { name: "Place in coming plans" });
  const atStart = place.getByRole("button", { name: "Hold on this line at this start" });
  await page.getByRole("application").focus();
  for (let step = 0; step < 12 && !(await atStart.isVisible()); step += 1)
    await page.keyboard.press("ArrowRight");
  await expect(place.getByText("Free: planning puts it where it fits best.")).toBeVisible();
  const orderId =
    ((await details.getByRole("heading", { level: 2 }).innerText()).match(/Order (\S+)/) ?? [])[1] ?? "";
  const before = await latest();
  const lot = before.document.lots.find((each) => each.orderId === orderId && each.lot === 0);
  if (lot === undefined) throw new Error(`order ${orderId} is planned`);
  const { lineId, start } = lot;
  const lineName = before.document.lines.find(({ id }) => id === lineId)?.name ?? "";
  const unheld = await picture();

  await atStart.focus();
  await page.keyboard.press("Enter");
  const state = place.getByRole("status");
  await expect(state).toContainText(`Held on ${lineName} from`);
  await expect(state).toBeFocused();
  await expect(place.getByText(/Counts from the next planning run on/)).toBeVisible();
  await expect(atStart).toBeDisabled();
  const { pins } = (await (await request.get(`${plantPath}/pins`)).json()) as { readonly pins: unknown };
  expect(pins).toMatchObject([{ orderId, lineId, start }]);
  await expect.poll(picture).not.toBe(unheld);

  await place.getByRole("button", { name: "Plan again now" }).press("Enter");
  await expect(page.getByText("The new plan is on the board.")).toBeVisible({ timeout: 60_000 });
  const after = await latest();
  expect(after.planId).not.toBe(before.planId);
  expect(after.document.lots.find((each) => each.orderId === orderId && each.lot === 0)).toMatchObject({
    lineId,
    start,
  });
  await page.getByRole("button", { name: "Table", exact: true }).click();
  await page.getByRole("searchbox", { name: "Find on the board" }).fill(orderId);
  await expect(page.getByRole("cell", { name: new RegExp(`^on ${lineName} from`) }).first()).toBeVisible();

  await page.getByRole("button", { name: "Board", exact: true }).click();
  await page.goto(`/?order=${encodeURIComponent(orderId)}`);
  await place.getByRole("button", { name: "Free", exact: true }).press("Enter");
  await expect(place.getByText("Free: planning puts it where it fits best.")).toBeVisible();
  expect(await (await request.get(`${plantPath}/pins`)).json()).toMatchObject({ pins: [] });
});

test("a pin decided on a list that has moved on says so, with what to do, and changes nothing", async ({
  page,
  request,
}) => {
  const list = (await (await request.get(`${plantPath}/pins`)).json()) as { readonly revision: number };
  const { document } = (await (await request.get(`${plantPath}/plans/latest`)).json()) as {
    readonly document: PlanDocument;
  };
  const lot = document.lots.find((each) => each.lot === 0);
  if (lot === undefined) throw new Error("nothing is planned");
  // what the page believes is a list that has moved on since
  await page.route("**/pins", (route) => route.fulfill({ json: { revision: list.revision + 7, pins: [] } }));
  await page.goto(`/?order=${encodeURIComponent(lot.orderId)}`);
  const place = page.getByRole("region", { name: "Place in coming plans" });
  await place.getByRole("button", { name: "Hold on this line", exact: true }).click();
  const alert = place.getByRole("alert");
  await expect(alert).toContainText("The held orders changed in the meantime.");
  await expect(alert).toContainText("Look at the order again");
  const now = (await (await request.get(`${plantPath}/pins`)).json()) as { readonly pins: unknown };
  expect(now.pins).toEqual([]);
});
