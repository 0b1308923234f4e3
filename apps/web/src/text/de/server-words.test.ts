import {
  EditRefusal,
  FaultCause,
  FileFaultCode,
  ImportFaultCode,
  ProblemCode,
  RecordKind,
  type LateLink,
} from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { formatFor } from "../../format/format.ts";
import { planNames, namingFor } from "../../format/plan-names.ts";
import { en } from "../en/en.ts";
import { de } from "./de.ts";

const format = formatFor({ locale: "de-DE", timeZone: "Europe/Berlin", currency: "EUR", text: de });
const naming = namingFor(planNames(undefined, de), format);
const { causes, refusals } = de;

const moment = "2026-12-01T05:00:00Z";
/** A value for each field that a fault can have. */
const everyValue = {
  lineId: "L1",
  mouldId: "M1",
  productId: "P1",
  insertId: "I1",
  sheetId: "S1",
  orderId: "A-1",
  otherLineId: "L2",
  check: "depth",
  compared: { needed: 120, has: 100, unit: "mm" },
  next: moment,
  earliest: moment,
  from: moment,
  to: moment,
  at: moment,
  zone: "Mars/Base",
  of: "number",
  id: "X",
  name: "N",
  date: "2026-02-30",
  pause: "12:00–12:30",
  shift: "06:00–11:00",
  place: 1,
  copy: 3,
  copies: 2,
  given: 3,
  depthMm: 60,
  massKg: 100,
  otherSet: 1,
  expected: "int",
  least: 1,
  most: 9,
  including: true,
  listed: ["csv"],
  fields: ["more"],
  reason: "Störung",
  instead: "03:00",
  planEnd: "E",
  over: "O",
  planStart: "B",
  field: "pieces",
  now: null,
  seen: "5",
  code: "empty-file",
  first: 1,
  mostDays: 366,
};
/** Where a field of the same name means something else. */
const ownValues: Partial<Record<FaultCause["kind"], object>> = {
  "duplicate id": { of: "line" },
  "unknown reference": { to: "line" },
  "copy beyond copies": { place: "mounted" },
};

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
    const { title, cause, remedy } = refusals.problem(said, naming);
    for (const words of [title, cause, remedy]) expect(words).toMatch(/\S.*\.$/);
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
    expect(refusals.problem(said, naming)).toMatchObject({
      title: "Der Auftrag lässt sich dort nicht festhalten.",
      cause: "Zu diesem Beginn ist keine mögliche Linie offen.",
      remedy: "Einen Beginn in der Arbeitszeit wählen; die nächste ist Di. 1. Dez. 06:00.",
    });
  });

  it("words a fault of a plant record with the record's kind, where the server speaks English", () => {
    const fault = {
      path: "line L1, trolleyId",
      problem: "There is no trolley T1 in this plant.",
      remedy: "Correct the number, or add the trolley first.",
      cause: { kind: "unknown reference", to: "trolley", id: "T1" },
      record: { kind: "line", name: "L1" },
    } as const;
    const said = { code: "invalid-input", title: "No.", cause: "No.", remedy: "Do.", faults: [fault] };
    const { cause, remedy, faults } = refusals.problem(said, naming);
    expect(cause).toBe("Linie L1: „T1“ ist kein Werkzeugwagen dieses Werks.");
    expect(remedy).toBe("Die Nummer berichtigen oder den Datensatz zuerst anlegen.");
    expect(faults[0]).toMatchObject({
      path: "Linie L1",
      problem: "„T1“ ist kein Werkzeugwagen dieses Werks.",
    });
    expect(en.refusals.problem(said, naming)).toBe(said);
    const ofFile = { sheet: "lines", row: 2, column: "trolley", value: "T1", severity: "error" as const };
    const { problem } = refusals.importFault({ ...ofFile, ...fault, values: {} }, naming);
    expect(problem).toBe("„T1“ ist kein Werkzeugwagen dieses Werks.");
  });

  it.each(FaultCause.options.map(({ shape }) => shape.kind.value))("words the fault %s", (kind) => {
    const cause = FaultCause.parse({ ...everyValue, ...ownValues[kind], kind });
    const { problem, remedy } = refusals.importFault(
      { sheet: "s", row: 1, column: null, value: "", severity: "error", problem: "", remedy: "", cause },
      naming,
    );
    for (const words of [problem, remedy]) {
      expect(words).toMatch(/^[\p{Lu}„\d<].*\.$/u);
      expect(words).not.toMatch(/undefined|\[object/);
    }
  });

  it.each(RecordKind.options)("names the kind of record %s", (kind) => {
    const fault = { path: "p", problem: "P.", remedy: "R.", record: { kind, name: "7" } };
    const said = { code: "invalid-input", title: "", cause: "", remedy: "", faults: [fault] };
    expect(refusals.problem(said, naming).faults[0]?.path).toMatch(/^\p{Lu}.* 7$/u);
  });

  it.each(FileFaultCode.options)("words why a file cannot be read: %s", (code) => {
    const cause = { kind: "file unreadable", code } as const;
    const fault = { path: "a.csv", problem: "P.", remedy: "R.", cause };
    const said = { code: "unreadable-file", title: "", cause: "", remedy: "", faults: [fault] };
    expect(refusals.problem(said, naming).cause).toMatch(/\.$/);
  });

  it.each(ImportFaultCode.options)("words the fault %s of an imported file, its values in place", (code) => {
    const values = new Proxy<Record<string, string>>({}, { get: (_, name) => `<${String(name)}>` });
    const fault = { sheet: "s", row: 1, column: null, value: "", severity: "error" as const };
    const { problem, remedy } = refusals.importFault(
      { ...fault, code, values, problem: "", remedy: "" },
      naming,
    );
    expect(problem).toMatch(/^\p{Ll}/u);
    expect(remedy).toMatch(/\.$/);
    expect(`${problem} ${remedy}`).not.toMatch(/undefined/);
  });
});
