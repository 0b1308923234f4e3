import { BatchResponse, SurenessResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plant, plantId } from "../fixtures/api-server.ts";
import { formOf, problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { enquiryOf, promiseAsks } from "../fixtures/promise-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 200 }));
});
afterAll(() => api.close());

const { post, promise } = promiseAsks(() => api.server);

describe("many enquiries at once", () => {
  const several = [
    enquiryOf({ pieces: 90_000 }),
    enquiryOf({ pieces: 70_000 }),
    enquiryOf({ pieces: 5_000, product: plant.products[3]!.id, wanted: "2026-12-04" }),
  ];
  const batch = async (mode: string) => {
    const answer = await post("/promises/batch", { mode, enquiries: several });
    expect([answer.statusCode, answer.body]).toMatchObject([200, expect.any(String)]);
    return BatchResponse.parse(answer.json()).answers;
  };
  const csv = (rows: readonly string[]) =>
    formOf([{ name: "enquiries.csv", content: ["enquiry;product;pieces;wanted", ...rows].join("\n") }]);
  const sendFile = (rows: readonly string[], query: string) =>
    api.server.inject({
      method: "POST",
      url: `/api/plants/${plantId}/promises/file?${query}`,
      ...csv(rows),
    });

  test("each alone are as if asked by themselves; in turn the second stands behind the first", async () => {
    const alone = await batch("each alone");
    for (const [index, answer] of alone.entries())
      expect(answer.outcome).toEqual((await promise(several[index])).outcome);
    const inTurn = await batch("in turn");
    expect(inTurn[0]!.outcome).toEqual(alone[0]!.outcome);
    const promisedOf = ({ outcome }: (typeof inTurn)[number]) =>
      outcome.status === "promised" ? outcome.offer.promised : "";
    expect(promisedOf(inTurn[1]!) > promisedOf(alone[1]!)).toBe(true);
    const together = await batch("together");
    expect(together.map(({ row }) => row)).toEqual([1, 2, 3]);
    expect(together.every(({ outcome }) => outcome.status === "promised")).toBe(true);
  });

  test("of a file are answered as JSON and as tables in which nothing is a formula", async () => {
    const [product] = plant.products;
    const rows = [`=1+1;${product!.name};20.000;04.12.2026`, `second;${product!.id};1000;`];
    const answered = await sendFile(rows, "mode=in%20turn");
    expect(BatchResponse.parse(answered.json()).answers).toMatchObject([
      { row: 2, reference: "=1+1", enquiry: { pieces: 20_000, wantedAt: "2026-12-04T23:00:00Z" } },
      { row: 3, reference: "second", enquiry: { wantedAt: null } },
    ]);
    const table = await sendFile(rows, "format=csv");
    expect(table.headers["content-disposition"]).toContain("-promises-");
    expect(table.body).toContain("'=1+1");
    expect(table.body.trim().split("\r\n")).toHaveLength(3);
    expect((await sendFile(rows, "format=xlsx")).rawPayload.subarray(0, 2).toString()).toBe("PK");
  });

  test("with bad rows are refused whole, each row by its field, value and remedy", async () => {
    const bad = problemOf(await sendFile(["a;nothing like it;10;", "b;;20;", "c;x;many;soon"], ""));
    expect(bad).toMatchObject({ status: 422, code: "invalid-input" });
    expect(bad.faults.map(({ path }) => path)).toEqual([
      "enquiries, row 3, product",
      "enquiries, row 4, pieces",
      "enquiries, row 4, wanted",
    ]);
    const unknown = problemOf(await sendFile(["a;nothing like it;10;"], ""));
    expect(unknown.faults).toMatchObject([{ path: "row 2, product" }]);
    expect(problemOf(await sendFile([], "")).cause).toContain("No row");
    const list = problemOf(
      await post("/promises/batch", { mode: "in turn", enquiries: [enquiryOf({ pieces: 0 })] }),
    );
    expect(list.faults).toMatchObject([{ path: "row 1, pieces" }]);
  });
});

describe("how sure an offer is", () => {
  test("is the same for the same seed, and a later day is no less sure", async () => {
    const enquiry = enquiryOf({ pieces: 120_000 });
    const ask = async (more: object = {}) => {
      const answer = await post("/promises/sureness", { enquiry, runs: 60, ...more });
      expect([answer.statusCode, answer.body]).toMatchObject([200, expect.any(String)]);
      return SurenessResponse.parse(answer.json());
    };
    const sure = await ask();
    expect(await ask()).toEqual(sure);
    expect(sure.at80! <= sure.at95!).toBe(true);
    const byThen = await ask({ by: sure.at95 });
    expect(byThen.chance).toBeGreaterThanOrEqual(0.95);
    expect((await ask({ by: sure.at80 })).chance).toBeLessThanOrEqual(byThen.chance);
    expect(problemOf(await post("/promises/sureness", { enquiry, kind: "extra shift" })).code).toBe(
      "invalid-input",
    );
  });
});
