import {
  applyHours,
  assembleProblem,
  auditDocument,
  describePlan,
  hoursFaults,
  inverseHours,
  retimedDocument,
  type Assembled,
  type HoursEdit,
  type PlanDocument,
} from "@formweek/application";
import { CalendarId, Plant, localTextAt } from "@formweek/capacity-model";
import { generatePlant } from "@formweek/demo-plant";
import { solve } from "@formweek/scheduler";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stillEnv } from "../helpers/still-env.ts";

const HOUR = 3600;

/** A change of hours as drawn: hours after the start of the plan, the line and people by their number. */
interface DrawnEdit {
  readonly kind: "close line" | "add shift";
  readonly line: number;
  readonly from: number;
  readonly hours: number;
  readonly heads: number;
}

const drawnEdits = fc.array(
  fc.record<DrawnEdit>({
    kind: fc.constantFrom("close line", "add shift"),
    line: fc.nat(5),
    from: fc.integer({ min: -6, max: 24 * 10 }),
    hours: fc.integer({ min: 1, max: 23 }),
    heads: fc.integer({ min: 1, max: 60 }).map((twentieths) => twentieths / 20),
  }),
  { minLength: 1, maxLength: 8 },
);

function editOf(plant: Plant, startAt: number, drawn: DrawnEdit): HoursEdit {
  const lineId = plant.lines[drawn.line % plant.lines.length]?.id ?? "";
  const from = localTextAt(plant.timeZone, startAt + drawn.from * HOUR);
  const to = localTextAt(plant.timeZone, startAt + (drawn.from + drawn.hours) * HOUR);
  if (drawn.kind === "close line")
    return { kind: "close line", closure: { lineId, from, to, reason: "Repair" } };
  const [date = "", start = ""] = from.split("T");
  const [, end = ""] = to.split("T");
  const [team, pool] = [plant.setterTeams[0], plant.operatorPools[0]];
  return {
    kind: "add shift",
    shift: {
      date,
      name: "extra",
      start,
      end,
      breaks: [],
      lineIds: [lineId],
      teamIds: team === undefined ? [] : [team.id],
      operators: pool === undefined ? [] : [{ poolId: pool.id, heads: drawn.heads }],
    },
  };
}

function documentOf(assembled: Assembled): PlanDocument {
  const result = solve(assembled.problem, { seed: 1, maxSteps: 20, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  return describePlan(assembled, result.plan, { engineVersion: "t", seed: 1, steps: 20, bound: null });
}

/** The same hours told by calendars alone: one for each line and team, with the closures taken out of the line's shifts by hand. */
function toldByCalendars(plant: Plant): Plant {
  const calendarOf = (id: string) => {
    const found = plant.calendars.find((calendar) => calendar.id === id);
    if (found === undefined) throw new Error(`no calendar ${id}`);
    return found;
  };
  const own = (kind: string, id: string) => CalendarId.parse(`${kind} ${id}`);
  const extra = (shifts: Plant["addedShifts"]) =>
    shifts.map(({ date, name, start, end, breaks }) => ({ date, name, start, end, breaks }));
  const lines = plant.lines.map(({ id, calendarId }) => {
    const calendar = calendarOf(calendarId);
    const added = extra(plant.addedShifts.filter(({ lineIds }) => lineIds.includes(id)));
    return { ...calendar, id: own("line", id), extraShifts: [...calendar.extraShifts, ...added] };
  });
  const teams = plant.setterTeams.map(({ id, calendarId }) => {
    const calendar = calendarOf(calendarId);
    const added = extra(plant.addedShifts.filter(({ teamIds }) => teamIds.includes(id)));
    return { ...calendar, id: own("team", id), extraShifts: [...calendar.extraShifts, ...added] };
  });
  const crews = plant.addedShifts.map((shift, index) => ({
    id: own("crew", String(index)),
    name: "crew",
    shifts: [],
    closures: [],
    extraShifts: extra([shift]),
  }));
  return {
    ...plant,
    calendars: [...plant.calendars, ...lines, ...teams, ...crews],
    addedShifts: [],
    lines: plant.lines.map((line) => ({ ...line, calendarId: own("line", line.id) })),
    setterTeams: plant.setterTeams.map((team) => ({ ...team, calendarId: own("team", team.id) })),
    operatorPools: plant.operatorPools.map((pool) => ({
      ...pool,
      crews: [
        ...pool.crews,
        ...plant.addedShifts.flatMap(({ operators }, index) =>
          operators
            .filter(({ poolId }) => poolId === pool.id)
            .map(({ heads }) => ({ calendarId: own("crew", String(index)), heads })),
        ),
      ],
    })),
  };
}

/** Orders on each line in the order in which they begin there. */
function turnsOf({ lots }: PlanDocument): ReadonlyMap<string, readonly string[]> {
  const turns = new Map<string, string[]>();
  for (const { lineId, orderId, lot } of [...lots].sort((a, b) => (a.start < b.start ? -1 : 1)))
    turns.set(lineId, [...(turns.get(lineId) ?? []), `${orderId}/${lot}`]);
  return turns;
}

describe("hours changed by hand", () => {
  it("give the problem that calendars with the same hours give, a sound plan at each step, and go back to what they were", () => {
    let [closed, added, kept] = [0, 0, 0];
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5 }), fc.nat(500), drawnEdits, (lines, seed, drawn) => {
        const { plant: first, orders } = generatePlant({ lines, orders: 14, seed });
        const assembledFor = (plant: Plant) => assembleProblem({ plant, orders, pins: [], now: 0 });
        const before = assembledFor(first);
        const { horizon } = before.problem;
        let plant = first;
        let document = documentOf(before);
        const done: HoursEdit[] = [];
        for (const each of drawn) {
          const edit = editOf(plant, horizon.start, each);
          if (hoursFaults(edit, { plant, horizon }).length > 0) continue;
          plant = Plant.parse(applyHours(plant, edit));
          done.push(edit);
          if (edit.kind === "close line") closed++;
          else added++;
          const assembled = assembledFor(plant);
          const told = assembledFor(toldByCalendars(plant));
          expect(assembled.problem).toEqual(told.problem);
          const retimed = retimedDocument(assembled, document);
          if (!retimed.ok) throw new Error(retimed.error.cause);
          expect(retimedDocument(told, document)).toMatchObject({
            ok: true,
            value: { segments: retimed.value.segments, lots: retimed.value.lots },
          });
          expect(auditDocument(retimed.value, assembled)).toEqual({ sameInputs: true, violations: [] });
          expect(retimed.value.orders).toHaveLength(orders.length);
          for (const { orderId, state } of retimed.value.orders)
            if (state === "unplanned")
              expect(
                retimed.value.unplanned.find((left) => left.orderId === orderId)?.reasons.length,
              ).toBeGreaterThan(0);
          if (retimed.value.unplanned.length === document.unplanned.length) {
            expect(turnsOf(retimed.value)).toEqual(turnsOf(document));
            kept++;
          }
          document = retimed.value;
        }
        const back = done.toReversed().map(inverseHours).reduce(applyHours, plant);
        expect(JSON.stringify(back)).toBe(JSON.stringify(first));
        expect(assembledFor(back).inputHash).toBe(before.inputHash);
      }),
      { numRuns: 12 },
    );
    expect(Math.min(closed, added, kept)).toBeGreaterThan(0);
  });

  it("leave no run in a spell in which its line is closed", () => {
    const { plant: first, orders } = generatePlant({ lines: 2, orders: 12, seed: 3 });
    const before = assembleProblem({ plant: first, orders, pins: [], now: 0 });
    const document = documentOf(before);
    const [lot] = document.lots;
    if (lot === undefined) throw new Error("nothing is planned");
    const at = (instant: string) => localTextAt(first.timeZone, Date.parse(instant) / 1000).slice(0, 16);
    // closures are told in whole minutes
    const closedUntil = `${lot.end.slice(0, 16)}:00Z`;
    const closure = { lineId: lot.lineId, from: at(lot.start), to: at(lot.end), reason: "Repair" };
    const plant = applyHours(first, { kind: "close line", closure });
    const assembled = assembleProblem({ plant, orders, pins: [], now: 0 });
    const retimed = retimedDocument(assembled, document);
    if (!retimed.ok) throw new Error(retimed.error.cause);
    const within = retimed.value.segments.filter(
      ({ kind, lineId, start, end }) =>
        kind === "run" && lineId === lot.lineId && start < closedUntil && end > lot.start,
    );
    expect(within).toEqual([]);
    expect(retimed.value.lines.find(({ id }) => id === lot.lineId)?.closures).toContainEqual(
      expect.objectContaining({ reason: "Repair" }),
    );
  });
});
