import { auditPlan, type Plan, type ProblemData, type SplitRule } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import { at, samplePlan, sampleProblem } from "../../fixtures/sample-plan.ts";

type Writable<T> = T extends readonly (infer Entry)[]
  ? Writable<Entry>[]
  : T extends object
    ? { -readonly [Field in keyof T]: Writable<T[Field]> }
    : T;

/** A plan and its problem to be spoilt, with their segments and lots at hand by kind. */
class Draft {
  readonly problem = structuredClone(sampleProblem) as Writable<ProblemData>;
  readonly plan = structuredClone(samplePlan) as Writable<Plan>;

  run(orderId: string, stretch = 0) {
    const runs = this.plan.segments.filter(
      (segment) => segment.kind === "run" && segment.orderId === orderId,
    );
    return runs[stretch] as Writable<Plan>["segments"][number] & { kind: "run" };
  }

  stop(reason: "closed" | "operators" | "warm-up") {
    const stops = this.plan.segments.filter(
      (segment) => segment.kind === "stop" && segment.reason === reason,
    );
    return stops[0] as Writable<Plan>["segments"][number] & { kind: "stop" };
  }

  change(lineId: string, nth = 0) {
    const changes = this.plan.segments.filter(
      (segment) => segment.kind === "change" && segment.lineId === lineId,
    );
    return changes[nth] as Writable<Plan>["segments"][number] & { kind: "change" };
  }

  drop(segment: Writable<Plan>["segments"][number]) {
    this.plan.segments.splice(this.plan.segments.indexOf(segment), 1);
  }

  job(orderId: string) {
    return this.problem.jobs.find((job) => job.orderId === orderId) as Writable<ProblemData>["jobs"][number];
  }

  line(lineId: string) {
    return this.problem.lines.find((line) => line.id === lineId) as Writable<ProblemData>["lines"][number];
  }

  /** Makes order A in two lots of 500 pieces, one after the other. */
  halveA(lots: SplitRule | null) {
    if (lots !== null) this.job("A").lots = { ...lots };
    const first = this.run("A");
    const half = { start: at(0, 7), lot: 1, pieces: 500 };
    this.plan.segments.splice(1, 0, { ...first, ...half });
    this.plan.lots.splice(1, 0, { ...this.plan.lots[0]!, ...half });
    Object.assign(first, { end: at(0, 7), pieces: 500 });
    Object.assign(this.plan.lots[0]!, { end: at(0, 7), finish: at(0, 7), pieces: 500 });
  }

  /** Moves everything of a line by some seconds, the summary of its lots included. */
  shiftLine(lineId: string, seconds: number) {
    for (const segment of this.plan.segments) {
      if (segment.lineId !== lineId) continue;
      segment.start += seconds;
      segment.end += seconds;
      if (segment.kind !== "change") continue;
      segment.mountStart += seconds;
      segment.tailStart += seconds;
    }
    for (const lot of this.plan.lots) {
      if (lot.lineId !== lineId) continue;
      lot.start += seconds;
      lot.end += seconds;
      lot.finish += seconds;
    }
  }
}

interface Case {
  readonly code: string;
  readonly rule: number;
  readonly title: string;
  readonly spoil: (draft: Draft) => void;
}

function broken(rule: number, code: string, [title, spoil]: readonly [string, (draft: Draft) => void]): Case {
  return { rule, code, title, spoil };
}

const cases: readonly Case[] = [
  broken(0, "malformed-plan", ["an instant that is not a number", (d) => void (d.run("A").start = NaN)]),
  broken(0, "malformed-plan", ["a fraction of a piece", (d) => void (d.run("A").pieces = 999.5)]),
  broken(0, "malformed-plan", ["an end before the start", (d) => void (d.run("A").end = at(0, 5))]),
  broken(0, "malformed-plan", ["an infinite total", (d) => void (d.plan.objective.total = Infinity)]),
  broken(0, "unknown-id", ["a line that is not there", (d) => void (d.run("A").lineId = "L9")]),
  broken(0, "unknown-id", ["an order that is not there", (d) => void (d.plan.unplanned[0]!.orderId = "Z")]),
  broken(0, "unknown-id", ["a change beyond the list", (d) => void (d.change("L1").changeSpec = 4)]),
  broken(0, "wrong-order-of-segments", ["lines listed backwards", (d) => void d.plan.segments.reverse()]),
  broken(0, "wrong-lot-summary", [
    "a finish without conditioning",
    (d) => void (d.plan.lots[1]!.finish -= 3600),
  ]),
  broken(0, "wrong-lot-summary", ["a lot left out", (d) => void d.plan.lots.pop()]),
  broken(0, "wrong-lot-summary", ["a lot listed twice", (d) => void d.plan.lots.push(d.plan.lots[3]!)]),
  broken(0, "wrong-lot-summary", ["lots out of order", (d) => void d.plan.lots.reverse()]),
  broken(0, "wrong-objective", [
    "one more hour of change",
    (d) => void (d.plan.objective.terms[2]!.amount += 1),
  ]),
  broken(0, "wrong-objective", ["another price", (d) => void (d.plan.objective.terms[3]!.price = 1)]),
  broken(0, "wrong-objective", ["a cheaper cost", (d) => void (d.plan.objective.terms[0]!.cost -= 0.01)]),
  broken(0, "wrong-objective", ["another total", (d) => void (d.plan.objective.total -= 0.01)]),
  broken(0, "wrong-objective", ["a term left out", (d) => void d.plan.objective.terms.pop()]),
  broken(1, "line-overlap", ["a run into the change after it", (d) => void (d.run("A").end += 60)]),
  broken(1, "line-overlap", ["a run before the change ends", (d) => void (d.run("C").start -= 60)]),
  broken(1, "line-not-free", ["a run before the line is free", (d) => void (d.line("L1").freeAt = at(0, 7))]),
  broken(2, "wrong-mould", [
    "a run with another mould",
    (d) => void (d.run("A").mould = { mouldId: "M2", copy: 0 }),
  ]),
  broken(2, "wrong-mould", ["a run without its mould", (d) => void (d.run("C").mould = null)]),
  broken(2, "wrong-mould", ["nothing taken out", (d) => void (d.change("L2").mouldOut = null)]),
  broken(2, "wrong-mould", ["the wrong mould put in", (d) => void (d.change("L2").mouldIn!.mouldId = "M2")]),
  broken(2, "mould-copy-unknown", [
    "a copy that does not exist",
    (d) => void (d.change("L2").mouldIn!.copy = 1),
  ]),
  broken(2, "mould-copy-taken", [
    "a mould carried in no time",
    (d) => void (d.problem.moulds[0]!.carryingSeconds = 1801),
  ]),
  broken(2, "mould-copy-taken", [
    "a mould that still hangs on an idle line",
    (d) => d.drop(d.change("L1", 1)),
  ]),
  broken(2, "mould-copy-taken", [
    "a mould that another idle line holds from the start",
    (d) => {
      d.problem.lines.push({ ...d.line("L1"), id: "L4", initial: { setupId: "m2-white", copy: 0 } });
      d.line("L2").initial = { setupId: "m1-white", copy: 0 };
    },
  ]),
  broken(2, "mould-copy-out-of-service", [
    "a run in the mould's service",
    (d) => void (d.problem.moulds[0]!.outOfService[0]!.start = at(1, 12)),
  ]),
  broken(2, "mould-copy-out-of-service", [
    "mounting in the mould's service",
    (d) => {
      d.problem.moulds[0]!.outOfService[0] = { copy: 0, start: at(1, 9), end: at(1, 9, 30) };
    },
  ]),
  broken(3, "change-missing", ["no change between two sheets", (d) => d.drop(d.change("L1"))]),
  broken(3, "change-not-needed", [
    "a change to what is there already",
    (d) => {
      d.change("L1").toSetupId = "m1-white";
    },
  ]),
  broken(3, "change-from-wrong-setup", [
    "a change from a set-up that is not there",
    (d) => void (d.change("L2").fromSetupId = "bare"),
  ]),
  broken(3, "wrong-change", ["the rules of another change", (d) => void (d.change("L2").changeSpec = 2)]),
  broken(3, "wrong-change-time", [
    "mounting through the break",
    (d) => void (d.change("L2").tailStart -= 1800),
  ]),
  broken(3, "wrong-change-time", ["a heating phase too short", (d) => void (d.change("L2").end -= 1)]),
  broken(3, "wrong-change-time", ["a pause between phases", (d) => void (d.change("L2").mountStart += 60)]),
  broken(3, "change-outside-hours", [
    "setters at work after their shift",
    (d) => {
      d.problem.teams[0]!.workingTime = { starts: [0], ends: [at(1, 8)], workedBefore: [0] };
    },
  ]),
  broken(3, "wrong-team", ["no team for team work", (d) => void (d.change("L2").teamId = null)]),
  broken(3, "wrong-team", ["a team for a sheet splice", (d) => void (d.change("L1").teamId = "early")]),
  broken(3, "team-double-booked", ["one team on two lines", (d) => d.shiftLine("L2", -60)]),
  broken(3, "wrong-trolley", ["a mould carried by hand", (d) => void (d.change("L2").trolleyId = null)]),
  broken(3, "wrong-trolley", ["another line's trolley", (d) => void (d.change("L2").trolleyId = "spare")]),
  broken(3, "trolley-double-booked", [
    "two teams on one trolley",
    (d) => {
      d.change("L1", 1).teamId = "other";
      d.shiftLine("L2", -60);
    },
  ]),
  broken(3, "wrong-stripping", ["a change called stripping", (d) => void (d.change("L2").stripping = true)]),
  broken(3, "idle-change", ["stripping called a change", (d) => void (d.change("L1", 1).stripping = false)]),
  broken(4, "outside-horizon", ["a run past the end", (d) => void (d.problem.horizon.end = at(1, 12, 30))]),
  broken(4, "lot-scattered", ["another product", (d) => void (d.run("B", 1).productId = "lid")]),
  broken(4, "lot-scattered", ["a lot on two lines", (d) => void (d.run("D", 1).lineId = "L1")]),
  broken(4, "lot-broken", ["a pause without a reason", (d) => d.drop(d.stop("operators"))]),
  broken(4, "lot-broken", ["a lot that ends with a stop", (d) => d.drop(d.run("D", 1))]),
  broken(4, "lot-broken", [
    "a stop for a lot that never runs",
    (d) => {
      d.stop("operators").lot = 1;
    },
  ]),
  broken(4, "runs-while-closed", [
    "a run into the night",
    (d) => {
      d.run("B").end += 600;
      d.stop("closed").start += 600;
    },
  ]),
  broken(4, "untrue-stop", [
    "open time called closed",
    (d) => {
      d.stop("operators").reason = "closed";
    },
  ]),
  broken(4, "untrue-stop", [
    "a pause while an operator is free",
    (d) => {
      d.problem.pools[0]!.crews[0]!.hundredths = 200;
    },
  ]),
  broken(4, "untrue-stop", [
    "closed time called shortage",
    (d) => {
      d.stop("closed").reason = "operators";
    },
  ]),
  broken(4, "warm-up-missing", [
    "pieces from a cold line",
    (d) => {
      d.drop(d.stop("warm-up"));
    },
  ]),
  broken(4, "warm-up-missing", ["half a warm-up", (d) => void (d.line("L1").restartWarmUpSeconds = 1200)]),
  broken(4, "warm-up-not-due", [
    "warm-up after a short night",
    (d) => void (d.line("L1").restartLimitSeconds = 8 * 3600),
  ]),
  broken(4, "wrong-run-time", [
    "a faster rate than the line has",
    (d) => {
      d.job("A").options[0]!.secondsPerPiece = 7.2011;
    },
  ]),
  broken(4, "wrong-run-time", ["a second too long", (d) => void (d.run("C").end += 1)]),
  broken(4, "wrong-stretch-pieces", [
    "pieces before their time",
    (d) => {
      d.run("B").pieces += 1;
      d.run("B", 1).pieces -= 1;
    },
  ]),
  broken(4, "wrong-stretch-pieces", [
    "pieces long after their time",
    (d) => {
      d.run("B").pieces -= 2;
      d.run("B", 1).pieces += 2;
    },
  ]),
  broken(5, "starts-too-early", [
    "before the earliest start",
    (d) => void (d.job("C").earliestStartAt = at(1, 11, 6)),
  ]),
  broken(5, "starts-too-late", [
    "a second after the latest start",
    (d) => void (d.job("C").latestStartAt = d.run("C").start - 1),
  ]),
  broken(5, "set-up-too-early", [
    "set up before the mould is there",
    (d) => void (d.job("C").options[0]!.availableFromAt = at(1, 8, 51)),
  ]),
  broken(5, "set-up-too-early", [
    "set up before the earliest start where changes await it",
    (d) => void (d.problem.changeAwaitsEarliestStart = true),
  ]),
  broken(5, "sheet-short", [
    "before the reel arrives",
    (d) => void (d.problem.sheets[1]!.arrivals[0]!.at = at(0, 8, 11)),
  ]),
  broken(5, "sheet-short", ["more sheet than there is", (d) => void (d.problem.sheets[0]!.stockKg = 74.9)]),
  broken(6, "does-not-fit", ["a line that may not make it", (d) => void (d.job("C").options = [])]),
  broken(6, "does-not-fit", [
    "a set-up that may not make it",
    (d) => void (d.job("C").options[0]!.setupId = "m1-red"),
  ]),
  broken(7, "operators-short", [
    "two runs, one operator",
    (d) => void (d.line("L2").operatorsHundredths = 101),
  ]),
  broken(7, "operators-short", [
    "no operator for warm-up",
    (d) => {
      d.problem.pools[0]!.crews = [
        {
          workingTime: {
            starts: [0, at(1, 6, 10)],
            ends: [at(0, 22), at(6, 0)],
            workedBefore: [0, at(0, 22)],
          },
          hundredths: 200,
        },
      ];
    },
  ]),
  broken(8, "pin-line-broken", ["another line than fixed", (d) => void (d.problem.pins[0]!.lineId = "L2")]),
  broken(8, "pin-start-broken", [
    "a second before the fixed start",
    (d) => void (d.problem.pins[0]!.startAt! += 1),
  ]),
  broken(8, "pin-sequence-broken", [
    "the sequence turned round",
    (d) => void (d.problem.pins[0]!.sequence = 3),
  ]),
  broken(8, "pin-sequence-broken", ["a free order before a fixed one", (d) => void d.problem.pins.shift()]),
  broken(9, "order-forgotten", ["an order not answered", (d) => void d.plan.unplanned.pop()]),
  broken(9, "order-answered-twice", [
    "planned and unplanned",
    (d) => void (d.plan.unplanned[0]!.orderId = "A"),
  ]),
  broken(9, "order-answered-twice", [
    "unplanned twice",
    (d) => void d.plan.unplanned.push(d.plan.unplanned[0]!),
  ]),
  broken(9, "unplanned-without-reason", ["no reason", (d) => void (d.plan.unplanned[0]!.reasons = [])]),
  broken(9, "wrong-order-pieces", ["a piece too few", (d) => void (d.job("A").pieces += 1)]),
  broken(9, "wrong-lot-number", ["lots numbered from 1", (d) => void (d.run("A").lot = 1)]),
  broken(9, "too-many-lots", ["a split that is not allowed", (d) => d.halveA(null)]),
  broken(9, "too-many-lots", [
    "one lot more than allowed",
    (d) => d.halveA({ most: 1, leastPieces: 500, unitPieces: 500 }),
  ]),
  broken(9, "lot-too-small", [
    "lots of half the least",
    (d) => d.halveA({ most: 2, leastPieces: 501, unitPieces: 1 }),
  ]),
  broken(9, "lot-breaks-unit", [
    "two broken boxes",
    (d) => d.halveA({ most: 2, leastPieces: 1, unitPieces: 300 }),
  ]),
];

describe("the audit", () => {
  it("finds nothing in the plan made by hand", () => {
    expect(auditPlan(sampleProblem, samplePlan)).toEqual([]);
  });

  it("lets moulds swap at the start of a run where the rules ask for no change", () => {
    const draft = new Draft();
    draft.problem.changeClasses[0]!.matrix[2]![1] = -1;
    draft.drop(draft.change("L2"));
    // M2 now leaves L2 when C starts there, 11:05; carried in 20 minutes it is on L3 in time for D at 11:30.
    expect(auditPlan(draft.problem, draft.plan).filter((violation) => violation.rule !== 0)).toEqual([]);
  });

  it("finds nothing in an order split as it may be", () => {
    const draft = new Draft();
    draft.halveA({ most: 2, leastPieces: 500, unitPieces: 250 });
    expect(auditPlan(draft.problem, draft.plan)).toEqual([]);
  });

  it.each(cases)("$code: $title", ({ code, rule, spoil }) => {
    const draft = new Draft();
    spoil(draft);
    const found = auditPlan(draft.problem, draft.plan).filter((violation) => violation.code === code);
    expect(found.length).toBeGreaterThan(0);
    for (const violation of found) {
      expect(violation.rule).toBe(rule);
      expect(violation.text).toMatch(/^[A-Z0-9].*[.]$/);
    }
  });
});
