import { PlantMessage } from "@formweek/contracts";
import { localPlanner } from "@formweek/application";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";

interface Received {
  readonly event: string;
  readonly id: number | null;
  readonly message: PlantMessage;
}

let api: ApiServer;
let address: string;
let revision = 1;
const streams: AbortController[] = [];

beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  address = await api.server.listen({ host: "127.0.0.1", port: 0 });
});
afterEach(() => {
  for (const stream of streams.splice(0)) stream.abort();
});
afterAll(() => api.close());

/** Follows the stream; what arrives is put into the list that comes back. */
async function follow(headers: Readonly<Record<string, string>> = {}): Promise<readonly Received[]> {
  const controller = new AbortController();
  streams.push(controller);
  const answer = await fetch(`${address}/api/plants/${plantId}/events`, {
    headers,
    signal: controller.signal,
  });
  expect(answer.headers.get("content-type")).toBe("text/event-stream; charset=utf-8");
  const received: Received[] = [];
  void readInto(received, answer.body).catch(() => undefined);
  return received;
}

async function readInto(received: Received[], body: ReadableStream<Uint8Array> | null): Promise<void> {
  if (body === null) return;
  let text = "";
  const decoder = new TextDecoder();
  for await (const chunk of body) {
    text += decoder.decode(chunk, { stream: true });
    const blocks = text.split("\n\n");
    text = blocks.pop() ?? "";
    received.push(...blocks.flatMap(messageOf));
  }
}

/** One block of a stream (WHATWG HTML, 9.2.6, "interpreting an event stream"); comments and settings are none. */
function messageOf(block: string): readonly Received[] {
  const fields = new Map(
    block.split("\n").map((line) => [line.slice(0, line.indexOf(":")), line.slice(line.indexOf(":") + 2)]),
  );
  const data = fields.get("data");
  if (data === undefined) return [];
  const id = fields.get("id");
  return [
    {
      event: fields.get("event") ?? "",
      id: id === undefined ? null : Number(id),
      message: PlantMessage.parse(JSON.parse(data)),
    },
  ];
}

async function changePlant(): Promise<void> {
  const put = await api.app.commands.putPlant({ plantId, plant, expectedRevision: revision }, localPlanner);
  if (!put.ok) throw new Error(put.error.cause);
  revision = put.value.revision;
}

describe("the stream of a plant's events", () => {
  test("tells what happens from now on, numbered without a gap", async () => {
    const received = await follow();
    await changePlant();
    await changePlant();
    await eventually("two events", () => received.length === 2);
    expect(received.map(({ event }) => event)).toEqual(["plant-changed", "plant-changed"]);
    const [first, second] = received.map(({ id }) => id ?? 0);
    expect(second).toBe((first ?? 0) + 1);
    expect(received[1]?.message).toMatchObject({ type: "plant-changed", revision });
  });

  test("sends first what was missed since the last event id", async () => {
    const all = await follow({ "last-event-id": "0" });
    await eventually("the history", () => all.length >= 2);
    expect(all.slice(0, 2).map(({ event, id }) => [event, id])).toEqual([
      ["plant-changed", 1],
      ["orders-changed", 2],
    ]);
    const rest = await follow({ "last-event-id": "1" });
    await changePlant();
    await eventually("the rest and the new one", () => rest.length === all.length - 1 && rest.length > 1);
    expect(rest.map(({ id }) => id)).toEqual(rest.map((_, index) => index + 2));
    expect(rest).toEqual(all.slice(1));
  });

  test("an id beyond the last one is taken for the last one", async () => {
    const received = await follow({ "last-event-id": "999999" });
    await changePlant();
    await eventually("one event", () => received.length === 1);
    expect(received[0]?.message).toMatchObject({ revision });
  });

  test("an id that is no number is refused", async () => {
    const url = `/api/plants/${plantId}/events`;
    const answer = await api.server.inject({ url, headers: { "last-event-id": "yesterday" } });
    expect(problemOf(answer)).toMatchObject({ code: "invalid-request", faults: [{ path: "last-event-id" }] });
  });

  test("a run tells that it waits, works and has ended; orders tell their revision", async () => {
    const received = await follow();
    const [first] = orders;
    const changed = await api.app.commands.putOrders(
      {
        plantId,
        orders: first === undefined ? [] : [{ ...first, pieces: first.pieces + 1 }],
        expectedRevision: 1,
      },
      localPlanner,
    );
    expect(changed).toEqual({ ok: true, value: { revision: 2 } });
    const payload = { seconds: 1.5 };
    const asked = await api.server.inject({ method: "POST", url: `/api/plants/${plantId}/solves`, payload });
    const { runId } = asked.json<{ readonly runId: string }>();
    await eventually("the run ended", () => received.some(({ event }) => event === "solve-ended"));
    expect(received[0]).toMatchObject({ event: "orders-changed", message: { revision: 2 } });
    const progress = received.flatMap(({ message }) => (message.type === "solve-progress" ? [message] : []));
    expect(progress[0]).toMatchObject({ runId, state: "queued", progress: null });
    expect(progress.some(({ state, progress: numbers }) => state === "running" && numbers !== null)).toBe(
      true,
    );
    expect(received.filter(({ event }) => event === "solve-progress").every(({ id }) => id === null)).toBe(
      true,
    );
    const ended = received.at(-1)?.message;
    const saved = received.at(-2)?.message;
    expect(saved).toMatchObject({ type: "plan-saved", runId });
    expect(ended).toMatchObject({ type: "solve-ended", runId, state: "done" });
  });

  test("ends when the server closes, so that closing does not wait for readers", async () => {
    const other = await openApiServer();
    await fill(other.app);
    const at = await other.server.listen({ host: "127.0.0.1", port: 0 });
    const answer = await fetch(`${at}/api/plants/${plantId}/events`);
    const whole = answer.text();
    await other.close();
    expect(await whole).toContain("retry: 2000");
  });
});
