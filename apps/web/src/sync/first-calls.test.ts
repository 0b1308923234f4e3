import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

const plants = [{ id: "north" }, { id: "south hall" }];
const plan = (plantId: string): string => `/api/plants/${encodeURIComponent(plantId)}/plans/latest`;

/** The module anew: what was asked for is kept in it. */
async function opened(
  page: string,
  { kept = null, answer }: { kept?: string | null; answer?: () => Response } = {},
) {
  const asked: string[] = [];
  vi.stubGlobal("localStorage", { getItem: () => kept });
  vi.stubGlobal("fetch", (url: string) => {
    asked.push(url);
    return answer === undefined ? Promise.resolve(Response.json(plants)) : Promise.resolve().then(answer);
  });
  vi.resetModules();
  const calls = await import("./first-calls.ts");
  calls.askFirst(page);
  // the answer, its words, and the call that follows
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
  await new Promise((resolve) => setImmediate(resolve));
  return { ...calls, asked };
}

describe("calls asked ahead of the app", () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ["performance"] }));
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  it("are the plants and the plan of the one that was open last, else of the first", async () => {
    expect((await opened("/", { kept: "south hall" })).asked).toEqual(["/api/plants", plan("south hall")]);
    expect((await opened("/", { kept: "gone" })).asked).toEqual(["/api/plants", plan("north")]);
  });

  it("are the plants alone on pages without the plan", async () => {
    expect((await opened("/orders")).asked).toEqual(["/api/plants"]);
  });

  it("answer once, and leave the list to be read again", async () => {
    const { takeFirst } = await opened("/");
    await expect((await takeFirst("/api/plants"))?.json()).resolves.toEqual(plants);
    expect(takeFirst("/api/plants")).toBeUndefined();
    expect(takeFirst("/api/else")).toBeUndefined();
  });

  it("are not taken when they are old", async () => {
    const { takeFirst } = await opened("/");
    vi.advanceTimersByTime(10_000);
    expect(takeFirst("/api/plants")).toBeUndefined();
  });

  it("ask for no plan where the list is none, and leave its failure to who takes it", async () => {
    const odd = await opened("/", { answer: () => Response.json({ plants }) });
    expect(odd.asked).toEqual(["/api/plants"]);
    const refused = await opened("/", { answer: () => new Response("no", { status: 503 }) });
    expect(refused.asked).toEqual(["/api/plants"]);
    const silent = await opened("/", {
      answer: () => {
        throw new TypeError("no connection");
      },
    });
    expect(silent.asked).toEqual(["/api/plants"]);
    await expect(silent.takeFirst("/api/plants")).rejects.toThrow("no connection");
  });
});
