import { EditRefusal, ImportFaultCode, ProblemCode, type LateLink } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { formatFor } from "../../format/format.ts";
import { planNames, namingFor } from "../../format/plan-names.ts";
import { en } from "../en/en.ts";
import { de } from "./de.ts";

const format = formatFor({ locale: "de-DE", timeZone: "Europe/Berlin", currency: "EUR", text: de });
const naming = namingFor(planNames(undefined, de), format);
const { causes, refusals } = de;

describe("what the server reports, in German", () => {
  it("words a fit check from its two sides, with decimals as Germans write them", () => {
    const tooDeep = { code: "depth", text: "Too deep.", numbers: {} };
    expect(causes.misfit({ ...tooDeep, compared: { needed: 120.5, has: 100, unit: "mm" } }, naming)).toBe(
      "Formtiefe: 120,5 mm, zulässig höchstens 100 mm; 20,5 mm zu viel.",
    );
    const thin = { ...tooDeep, code: "sheet-thickness-least" };
    expect(causes.misfit({ ...thin, compared: { needed: 0.2, has: 0.3, unit: "mm" } }, naming)).toContain(
      "mindestens 0,3 mm; 0,1 mm zu wenig",
    );
    const polymer = { ...tooDeep, code: "polymer-on-line", compared: { needed: "PET", has: ["PP", "PS"] } };
    expect(causes.misfit(polymer, naming)).toBe("Die Linie fährt PET nicht; sie fährt PP, PS.");
  });

  it("falls back to the server's own words where there is nothing else, or a newer code", () => {
    const said = { code: "newer", text: "Newer reason.", numbers: {} };
    expect(causes.misfit({ ...said, compared: null }, naming)).toBe("Newer reason.");
    expect(causes.misfit({ ...said, compared: { needed: 1, has: 0, unit: "mm" } }, naming)).toBe(
      "Newer reason.",
    );
    expect(causes.unplanned({ text: "As it was." }, naming)).toBe("As it was.");
    const problem = { code: "newer", title: "T", cause: "C", remedy: "R", faults: [] };
    expect(refusals.problem(problem, naming)).toEqual(problem);
  });

  it("words the links of a late order by what happened in them", () => {
    const link: LateLink = {
      kind: "change",
      from: "2026-12-01T05:00:00Z",
      to: "2026-12-01T07:00:00Z",
      lineId: "L1",
      orderId: null,
      text: "L1 is changed.",
      cause: { kind: "change", lineId: "L1", mouldId: "M2", sheetId: "S3", teamId: "T4", workSeconds: 5400 },
    };
    expect(causes.link(link, 7200, naming)).toBe(
      "L1 wird von T4 auf M2, S3 gerüstet: 1 h 30 Arbeit, 30 min Unterbrechung",
    );
    expect(en.causes.link(link, 7200, naming)).toBe("L1 is changed.");
  });

  it.each(EditRefusal.shape.code.options)("words the refusal %s of a change by hand", (code) => {
    const refusal = { code, orderId: "A-1", lot: 1, lineId: "L1", otherOrderId: "A-2", text: "", remedy: "" };
    const reasons = [{ code: "taken-out", lineId: null, text: "", cause: { kind: "taken out" as const } }];
    const words = refusals.edit({ ...refusal, reasons, leastPieces: 5000, unitPieces: 1000 }, naming);
    expect(words.cause).toMatch(/A-1|A-2|L1/);
    expect(words.cause).toContain("Er wurde von Hand aus dem Plan genommen.");
    expect(words.remedy).toMatch(/\.$/);
  });

  it.each(ProblemCode.options)("words the failure %s", (code) => {
    const said = { code, title: "", cause: "The very entries.", remedy: "", faults: [] };
    for (const words of Object.values(refusals.problem(said, naming))) expect(words).toMatch(/\S.*\.$/);
  });

  it("words why an order cannot be held at a place, on the plant's clock", () => {
    const next = "2026-12-01T05:00:00Z";
    const fault = {
      path: "start",
      problem: "Closed.",
      remedy: "Other.",
      cause: { kind: "closed" as const, next },
    };
    const said = { code: "invalid-input", title: "No.", cause: "Closed.", remedy: "Other.", faults: [fault] };
    expect(refusals.problem(said, naming)).toEqual({
      title: "Der Auftrag lässt sich dort nicht festhalten.",
      cause: "Zu diesem Beginn ist keine mögliche Linie offen.",
      remedy: "Einen Beginn in der Arbeitszeit wählen; die nächste ist Di. 1. Dez. 06:00.",
    });
  });

  it.each(ImportFaultCode.options)("words the fault %s of an imported file, its values in place", (code) => {
    const values = new Proxy<Record<string, string>>({}, { get: (_, name) => `<${String(name)}>` });
    const fault = { sheet: "s", row: 1, column: null, value: "", severity: "error" as const };
    const { problem, remedy } = refusals.importFault({ ...fault, code, values, problem: "", remedy: "" });
    expect(problem).toMatch(/^\p{Ll}/u);
    expect(remedy).toMatch(/\.$/);
    expect(`${problem} ${remedy}`).not.toMatch(/undefined/);
  });
});
