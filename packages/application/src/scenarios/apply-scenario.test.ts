import { compilePlantCalendars, Plant, spellsOf, teamWorkingTime } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import { applyScenario } from "./apply-scenario.ts";
import type { ScenarioChange } from "./scenario-change.ts";

const plant = Plant.parse(demoPlant("calm"));
const orders = demoOrders("calm").toSorted((a, b) => a.dueAt - b.dueAt || (a.id < b.id ? -1 : 1));
const first = orders[0]!;
const snapshot: PlanningSnapshot = {
  plant,
  orders,
  bookRevision: 1,
  heldOrderIds: new Set(),
  stockShares: [{ orderId: first.id, pieces: 10 }],
  pins: [],
};
const after = (...changes: readonly ScenarioChange[]): PlanningSnapshot => applyScenario(snapshot, changes);
const at = (text: string): number => Date.parse(`${text}:00Z`) / 1000;

describe("a scenario's changes", () => {
  it("bring one more team in just its spell, with as many setters as the other, each under a name of its own", () => {
    // over the change of the clocks in spring, in the plant's zone
    const spell = { from: at("2027-03-26T17:00"), to: at("2027-03-29T05:30") };
    const change = { kind: "another team", likeTeamId: "setters-B", name: "Third team", ...spell } as const;
    const { plant: changed } = after(change, { ...change, name: "Fourth team" });
    const [third, fourth] = changed.setterTeams.slice(-2);
    expect([third, fourth]).toMatchObject([
      { name: "Third team", setters: 2 },
      { name: "Fourth team", setters: 2 },
    ]);
    expect(third?.id).not.toBe(fourth?.id);
    const window = { start: at("2027-03-20T00:00"), end: at("2027-04-05T00:00") };
    const calendars = compilePlantCalendars(changed, window);
    expect(spellsOf(teamWorkingTime(third!, calendars))).toEqual([[spell.from, spell.to]]);
  });

  it("give a mould copies, and one rate on a line for all that it makes there", () => {
    const { lineId, mouldId } = plant.provenRates[0]!;
    const { plant: changed } = after(
      { kind: "more copies", mouldId, more: 2 },
      { kind: "cycle rate", lineId, mouldId, cyclesPerMin: 7.5 },
    );
    const copies = (of: Plant) => of.moulds.find(({ id }) => id === mouldId)?.copies ?? 0;
    expect(copies(changed)).toBe(copies(plant) + 2);
    const { problem } = assembleProblem({
      ...after({ kind: "cycle rate", lineId, mouldId, cyclesPerMin: 7.5 }),
      now: 0,
    });
    const mould = plant.moulds.find(({ id }) => id === mouldId)!;
    const setups = new Set(problem.setups.filter((setup) => setup.mouldId === mouldId).map(({ id }) => id));
    const options = problem.jobs
      .flatMap((job) => job.options)
      .filter((option) => option.lineId === lineId && setups.has(option.setupId));
    expect(options.length).toBeGreaterThan(0);
    for (const option of options)
      expect(option.secondsPerPiece).toBeCloseTo(60 / 7.5 / (mould.cavitiesAlong * mould.cavitiesAcross), 9);
    const others = changed.provenRates.filter((rate) => rate.mouldId !== mouldId || rate.lineId !== lineId);
    expect(others).toEqual(
      plant.provenRates.filter((rate) => rate.mouldId !== mouldId || rate.lineId !== lineId),
    );
  });

  it("take orders out with the stock that they were promised, bring new ones in, and keep the book by due date", () => {
    const last = orders.at(-1)!;
    const changed = after(
      { kind: "cancel order", orderId: first.id },
      { kind: "change order", orderId: last.id, pieces: 777, dueAt: first.dueAt },
      { kind: "rush order", order: { ...first, id: "0-RUSH" } },
    );
    expect(changed.stockShares).toEqual([]);
    expect(changed.orders.some(({ id }) => id === first.id)).toBe(false);
    expect(changed.orders.find(({ id }) => id === last.id)).toEqual({
      ...last,
      pieces: 777,
      dueAt: first.dueAt,
    });
    expect(changed.orders[0]?.id).toBe("0-RUSH");
    const keys = changed.orders.map(({ dueAt, id }) => `${dueAt} ${id}`);
    expect(keys).toEqual(keys.toSorted((a, b) => (a < b ? -1 : 1)));
  });

  it("leave holds behind the book, and untouched", () => {
    const heldSnapshot = {
      ...snapshot,
      orders: [...orders.slice(1), first],
      heldOrderIds: new Set<string>([first.id]),
    };
    const changed = applyScenario(heldSnapshot, [{ kind: "cancel order", orderId: orders[1]!.id }]);
    expect(changed.orders.at(-1)).toBe(first);
  });
});
