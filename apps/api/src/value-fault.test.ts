import { describe, expect, it } from "vitest";
import { z } from "zod";
import { valueFault } from "@formweek/application";

/** What zod itself says of a value that a schema refuses. */
function issueOf(schema: z.ZodType, value: unknown) {
  const [issue] = schema.safeParse(value).error?.issues ?? [];
  if (issue === undefined) throw new Error("the schema takes the value");
  return { ...issue };
}

describe("what is wrong with a value, apart from words", () => {
  it.each<readonly [string, z.ZodType, unknown, ReturnType<typeof valueFault>]>([
    ["kind", z.string(), 5, { kind: "value of wrong kind", expected: "string" }],
    ["whole number", z.int(), 1.5, { kind: "value of wrong kind", expected: "int" }],
    ["least", z.number().min(1), 0, { kind: "value too small", of: "number", least: 1, including: true }],
    ["bound", z.number().gt(0), 0, { kind: "value too small", of: "number", least: 0, including: false }],
    ["most", z.number().max(9), 10, { kind: "value too large", of: "number", most: 9, including: true }],
    [
      "short text",
      z.string().min(1),
      "",
      { kind: "value too small", of: "letters", least: 1, including: true },
    ],
    [
      "long list",
      z.array(z.int()).max(1),
      [1, 2],
      { kind: "value too large", of: "entries", most: 1, including: true },
    ],
    ["choice", z.enum(["csv", "xlsx"]), "pdf", { kind: "value not listed", listed: ["csv", "xlsx"] }],
    ["fields", z.strictObject({}), { more: 1 }, { kind: "fields unknown", fields: ["more"] }],
    ["form", z.iso.date(), "soon", { kind: "value not allowed" }],
  ])("tells a wrong %s", (_, schema, value, fault) => {
    expect(valueFault(issueOf(schema, value))).toEqual(fault);
  });

  it("tells what is missing from what is of the wrong kind", () => {
    const issue = issueOf(z.object({ seconds: z.int() }), {});
    expect(valueFault(issue, true)).toEqual({ kind: "value missing" });
  });
});
