import type { ObjectiveTerm, UnplannedReason } from "../plan/plan.ts";
import type { Violation } from "../result.ts";
import { finding } from "./finding.ts";
import { sayValue } from "./wording.ts";

/** What a field must be; `says` completes "… is needed". */
interface Expectation {
  readonly holds: (value: unknown) => boolean;
  readonly says: string;
}

type Fields = readonly (readonly [field: string, expectation: Expectation])[];
/** Path of a value in the plan; said only of one that is at fault. */
type Place = () => string;
type LooseRecord = Readonly<Record<string, unknown>>;

const reasonCodes: Readonly<Record<UnplannedReason["code"], true>> = {
  "no-line-fits": true,
  "line-never-open-long-enough": true,
  "mould-unavailable": true,
  "no-team-hours": true,
  "sheet-never-arrives": true,
  "no-operators": true,
  "pin-impossible": true,
  "starts-too-late": true,
  "beyond-horizon": true,
  "taken-out": true,
};
const termNames: Readonly<Record<ObjectiveTerm["name"], true>> = {
  "weighted tardiness": true,
  "late orders": true,
  "change time": true,
  "team time": true,
  "start-up scrap": true,
  overtime: true,
  earliness: true,
  "load balance": true,
  "lines changed": true,
  "starts moved": true,
  "unplanned orders": true,
  makespan: true,
};

const isText = (value: unknown) => typeof value === "string";
const isCount = (value: unknown) => Number.isSafeInteger(value) && (value as number) >= 0;
const orNull = (expectation: Expectation): Expectation => ({
  holds: (value) => value === null || expectation.holds(value),
  says: `${expectation.says} or null`,
});
const oneOf = (allowed: Readonly<Record<string, true>>): Expectation => ({
  holds: (value) => typeof value === "string" && Object.hasOwn(allowed, value),
  says: `one of ${Object.keys(allowed).join(", ")}`,
});

const text: Expectation = { holds: isText, says: "a text" };
const filledText: Expectation = { holds: (value) => isText(value) && value !== "", says: "a text" };
const flag: Expectation = { holds: (value) => typeof value === "boolean", says: "true or false" };
const instant: Expectation = { holds: Number.isSafeInteger, says: "a whole number of seconds" };
const count: Expectation = { holds: isCount, says: "a whole number, 0 or more" };
const pieces: Expectation = {
  holds: (value) => isCount(value) && value !== 0,
  says: "a whole number of pieces, 1 or more",
};
const amount: Expectation = { holds: Number.isFinite, says: "a finite number" };
const mouldCopy: Expectation = {
  holds: (value) => isRecord(value) && isText(value["mouldId"]) && isCount(value["copy"]),
  says: "a mould with its copy",
};
const reasonList: Expectation = { holds: Array.isArray, says: "a list of reasons" };

const fieldsOf = (fields: Readonly<Record<string, Expectation>>): Fields => Object.entries(fields);

const onLine = { lineId: text, start: instant, end: instant };
const segmentFields: Readonly<Record<string, Fields>> = {
  change: fieldsOf({
    ...onLine,
    fromSetupId: orNull(text),
    toSetupId: text,
    changeSpec: count,
    stripping: flag,
    teamId: orNull(text),
    trolleyId: orNull(text),
    mountStart: instant,
    tailStart: instant,
    mouldOut: orNull(mouldCopy),
    mouldIn: orNull(mouldCopy),
  }),
  run: fieldsOf({
    ...onLine,
    orderId: text,
    lot: count,
    productId: text,
    setupId: text,
    mould: orNull(mouldCopy),
    // A stretch may be shorter than the time of one piece.
    pieces: count,
  }),
  stop: fieldsOf({
    ...onLine,
    reason: oneOf({ closed: true, operators: true, "warm-up": true, service: true }),
    orderId: text,
    lot: count,
  }),
};
const lotFields = fieldsOf({
  orderId: text,
  lot: count,
  lineId: text,
  setupId: text,
  pieces,
  start: instant,
  end: instant,
  finish: instant,
});
const unplannedFields = fieldsOf({ orderId: text, reasons: reasonList });
const reasonFields = fieldsOf({ code: oneOf(reasonCodes), lineId: orNull(text), text: filledText });
const termFields = fieldsOf({
  name: oneOf(termNames),
  unit: filledText,
  amount,
  price: amount,
  cost: amount,
});
const objectiveFields = fieldsOf({ total: amount });

function isRecord(value: unknown): value is LooseRecord {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function malformed(where: Place, value: unknown, says: string): Violation {
  return finding("malformed-plan", {}, `The plan's ${where()} is ${sayValue(value)}; ${says} is needed.`);
}

/** What is wrong with a value that stands at a place. */
type Judge = (value: unknown, where: Place, faults: Violation[]) => void;

/** Judges the fields of a record; true where all are sound. */
function judgeFields(value: LooseRecord, where: Place, fields: Fields, faults: Violation[]): boolean {
  const before = faults.length;
  for (const [field, expectation] of fields) {
    if (!expectation.holds(value[field]))
      faults.push(malformed(() => `${where()}.${field}`, value[field], expectation.says));
  }
  return faults.length === before;
}

function judgeRecord(fields: Fields): Judge {
  return (value, where, faults) => {
    if (isRecord(value)) judgeFields(value, where, fields, faults);
    else faults.push(malformed(where, value, "a record"));
  };
}

function judgeList(value: unknown, where: Place, judge: Judge, faults: Violation[]): void {
  if (!Array.isArray(value)) {
    faults.push(malformed(where, value, "a list"));
    return;
  }
  // by index, so that gaps in the list are looked at too
  for (let index = 0; index < value.length; index++)
    judge(value[index], () => `${where()}[${index}]`, faults);
}

const phasesOfOther = [["start", "end"]] as const;
const phasesOfChange = [
  ["start", "mountStart"],
  ["mountStart", "tailStart"],
  ["tailStart", "end"],
] as const;

/** Phases of a segment that run backwards; asked only once its fields are sound. */
function judgePhases(segment: LooseRecord, where: Place, faults: Violation[]): void {
  for (const [before, field] of segment["kind"] === "change" ? phasesOfChange : phasesOfOther) {
    const gap = (segment[field] as number) - (segment[before] as number);
    if (gap >= 0) continue;
    const says = `The plan's ${where()}.${field} lies ${-gap} s before its ${before}.`;
    faults.push(finding("malformed-plan", {}, says));
  }
}

function judgeSegment(value: unknown, where: Place, faults: Violation[]): void {
  if (!isRecord(value)) {
    faults.push(malformed(where, value, "a record"));
    return;
  }
  const kind = value["kind"];
  if (typeof kind !== "string" || !Object.hasOwn(segmentFields, kind)) {
    faults.push(malformed(() => `${where()}.kind`, kind, "change, run or stop"));
    return;
  }
  if (judgeFields(value, where, segmentFields[kind] as Fields, faults)) judgePhases(value, where, faults);
}

/** Judges a record and, where that is sound, the list in one of its fields. */
function judgeWithList(fields: Fields, list: string, judge: Judge): Judge {
  return (value, where, faults) => {
    if (!isRecord(value)) faults.push(malformed(where, value, "a record"));
    else if (judgeFields(value, where, fields, faults))
      judgeList(value[list], () => `${where()}.${list}`, judge, faults);
  };
}

const judgeLot = judgeRecord(lotFields);
const judgeUnplanned = judgeWithList(unplannedFields, "reasons", judgeRecord(reasonFields));
const judgeObjective = judgeWithList(objectiveFields, "terms", judgeRecord(termFields));

/** Whether a value of any origin is a plan at all: every field there, of its kind, no NaN, no time running backwards. */
export function planShapeFaults(plan: unknown): Violation[] {
  if (!isRecord(plan)) {
    return [finding("malformed-plan", {}, `The plan is ${sayValue(plan)}; a record is needed.`)];
  }
  const faults: Violation[] = [];
  judgeList(plan["segments"], () => "segments", judgeSegment, faults);
  judgeList(plan["lots"], () => "lots", judgeLot, faults);
  judgeList(plan["unplanned"], () => "unplanned", judgeUnplanned, faults);
  judgeObjective(plan["objective"], () => "objective", faults);
  return faults;
}
