import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { everyOrder, orderStates, readOrderQuery, writeOrderQuery } from "./order-query.ts";
import type { OrderQuery } from "./order-rows.ts";

const value = fc.option(fc.string({ minLength: 1, maxLength: 12 }));
const queries: fc.Arbitrary<OrderQuery> = fc.record({
  text: fc.string({ maxLength: 12 }),
  state: fc.option(fc.constantFrom(...orderStates)),
  customer: value,
  productId: value,
  sheetId: value,
  kind: fc.option(fc.constantFrom("firm", "forecast")),
  sort: fc.record({ column: fc.constantFrom("id", "dueAt", "slackSeconds"), isDescending: fc.boolean() }),
});

describe("the order book's address", () => {
  it("says what was asked for, and leaves the parameters of others", () => {
    fc.assert(
      fc.property(queries, (query) => {
        const address = writeOrderQuery(query, new URLSearchParams("show=table&find=before"));
        expect(readOrderQuery(new URLSearchParams(address.toString()))).toEqual(query);
        expect(address.get("show")).toBe("table");
      }),
    );
  });

  it("is bare when nothing is asked for", () => {
    const query = readOrderQuery(new URLSearchParams("state=late&customer=Alder&kind=firm&sort=id&down=1"));
    const bare = { ...query, ...everyOrder, sort: { column: "dueAt", isDescending: false } } as const;
    expect(writeOrderQuery(bare, new URLSearchParams("state=late&sort=id")).toString()).toBe("");
  });

  it("takes what it does not understand as not said", () => {
    const odd = new URLSearchParams("state=lost&kind=some&sort=colour&down=yes&customer=&sheet=");
    expect(readOrderQuery(odd)).toEqual({ ...everyOrder, sort: { column: "dueAt", isDescending: false } });
  });
});
