import type { EventBus, PlantMessage } from "@formweek/application";
import { afterAll, beforeAll, expect, test } from "vitest";
import { eventually } from "../../fixtures/eventually.ts";
import { newId, someProgress } from "../../fixtures/stored-records.ts";

/** Two ends of one bus; where it joins processes they are separate connections, else the same one. */
export interface BusUnderTest {
  readonly speaker: EventBus;
  readonly hearer: EventBus;
  readonly close: () => Promise<void>;
}

/** What every event bus must do. */
export function eventBusSuite(open: () => Promise<BusUnderTest>): void {
  let under: BusUnderTest;
  beforeAll(async () => {
    under = await open();
  });
  afterAll(() => under.close());

  const stored = (plantId: string, sequence: number): PlantMessage => ({
    plantId,
    sequence,
    at: 1_795_000_000 + sequence,
    body: { type: "orders-changed", revision: sequence },
  });
  const heardFrom = async (plantId: string) => {
    const heard: PlantMessage[] = [];
    const { close } = await under.hearer.subscribe(plantId, (message) => void heard.push(message));
    return { heard, close };
  };

  test("a listener hears every message of its plant, in order and unchanged", async () => {
    const plantId = newId();
    const { heard, close } = await heardFrom(plantId);
    const said = Array.from({ length: 50 }, (_, index) => stored(plantId, index + 1));
    for (const message of said) await under.speaker.publish(message);
    await eventually("all are heard", () => heard.length === said.length);
    expect(heard).toEqual(said);
    await close();
  });

  test("progress passes, too", async () => {
    const plantId = newId();
    const { heard, close } = await heardFrom(plantId);
    const body = { type: "solve-progress", runId: "r", state: "running", progress: someProgress } as const;
    await under.speaker.publish({ plantId, sequence: null, at: 1, body });
    await eventually("it is heard", () => heard.length === 1);
    expect(heard).toEqual([{ plantId, sequence: null, at: 1, body }]);
    await close();
  });

  test("plants are apart", async () => {
    const [one, other] = [newId(), newId()];
    const [here, there] = [await heardFrom(one), await heardFrom(other)];
    await under.speaker.publish(stored(one, 1));
    await under.speaker.publish(stored(other, 1));
    await eventually("both are heard", () => here.heard.length === 1 && there.heard.length === 1);
    expect([here.heard[0]?.plantId, there.heard[0]?.plantId]).toEqual([one, other]);
    await here.close();
    await there.close();
  });

  test("who has closed hears nothing more, others still do", async () => {
    const plantId = newId();
    const [gone, stays] = [await heardFrom(plantId), await heardFrom(plantId)];
    await under.speaker.publish(stored(plantId, 1));
    await eventually("both heard the first", () => gone.heard.length === 1 && stays.heard.length === 1);
    await gone.close();
    await gone.close();
    await under.speaker.publish(stored(plantId, 2));
    await eventually("the other heard the second", () => stays.heard.length === 2);
    expect(gone.heard).toHaveLength(1);
    await stays.close();
    const again = await heardFrom(plantId);
    await under.speaker.publish(stored(plantId, 3));
    await eventually("a new listener hears", () => again.heard.length === 1);
    await again.close();
  });

  test("a listener that fails does not keep a message from the next one", async () => {
    const plantId = newId();
    const bad = await under.hearer.subscribe(plantId, () => {
      throw new Error("listener");
    });
    const good = await heardFrom(plantId);
    await under.speaker.publish(stored(plantId, 1));
    await eventually("the good one heard it", () => good.heard.length === 1);
    await bad.close();
    await good.close();
  });

  test("nobody listening is no fault", async () => {
    await expect(under.speaker.publish(stored(newId(), 1))).resolves.toBeUndefined();
  });
}
