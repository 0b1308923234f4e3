import { Plant } from "@formweek/capacity-model";
import { demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";
import { inverseRecords, listChanges, orderChanges, withListChanges } from "./record-changes.ts";

const plant = Plant.parse(demoPlant("breakdown"));
const [mould, ...others] = plant.moulds;
const richer = { ...plant, moulds: [{ ...mould!, copies: mould!.copies + 1 }, ...others], lineClosures: [] };

describe("what a scenario changes in the records", () => {
  it("is the stretch of each list that is another, and leads there and back", () => {
    const changes = listChanges(plant, richer);
    expect(changes.map(({ list, at, before, after }) => [list, at, before.length, after.length])).toEqual([
      ["lineClosures", 0, plant.lineClosures.length, 0],
      ["moulds", 0, 1, 1],
    ]);
    expect(withListChanges(plant, changes)).toEqual({ ok: true, value: richer });
    const back = inverseRecords({
      kind: "adopt",
      scenarioId: "s",
      scenarioRevision: 1,
      plant: changes,
      orders: [],
    });
    expect(withListChanges(richer, back.plant)).toEqual({ ok: true, value: plant });
  });

  it("is not made over records that others have changed since; beside them it is", () => {
    const changes = listChanges(plant, richer);
    const renamed = { ...plant, moulds: [{ ...mould!, name: "Renamed" }, ...others] };
    expect(withListChanges(renamed, changes)).toEqual({ ok: false, error: "moulds" });
    const beside = { ...plant, moulds: [mould!, ...others.slice(0, -1)] };
    expect(withListChanges(beside, changes)).toMatchObject({ ok: true });
  });

  it("names orders that are new, gone or another", () => {
    const order = (id: string, pieces: number) =>
      ({ id, pieces }) as Parameters<typeof orderChanges>[0][number];
    const [a, b, c] = [order("a", 1), order("b", 2), order("c", 3)];
    expect(orderChanges([a, b], [a, { ...b, pieces: 9 }, c])).toEqual([
      { before: b, after: { ...b, pieces: 9 } },
      { before: null, after: c },
    ]);
    expect(orderChanges([a], [])).toEqual([{ before: a, after: null }]);
  });
});
