/** Plan and order book taken away as CSV and XLSX, read back and held against the plan that the interface serves. */
import { tableReader } from "@formweek/adapters/tabular";
import { localPlanner, type Cell, type TableLimits } from "@formweek/application";
import { Order, OrderId } from "@formweek/capacity-model";
import { OrderBookResponse, PlanResponse, SolveRunResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { fillPlant } from "../fixtures/planning-asks.ts";

const LIMITS: TableLimits = {
  maxFileBytes: 8 * 1024 * 1024,
  maxUnpackedBytes: 64 * 1024 * 1024,
  maxRowsPerTable: 10_000,
  maxColumns: 50,
  maxTables: 3,
  maxCellCharacters: 40_000,
};
const FORMATS = ["csv", "xlsx"] as const;
type Format = (typeof FORMATS)[number];
type Row = Readonly<Record<string, Cell>>;

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const [first] = orders;
if (first === undefined) throw new Error("the demo has orders");

const get = (path: string, id = plantId) => api.server.inject({ url: `/api/plants/${id}${path}` });

/** The file behind an address, its table read back by the import's reader: one record a row, by header. */
async function taken(path: string, format: Format) {
  const answer = await get(`${path}?format=${format}`);
  expect(answer.statusCode, answer.body).toBe(200);
  const name = /^attachment; filename="([^"]+)"$/.exec(`${answer.headers["content-disposition"]}`)?.[1] ?? "";
  const result = await tableReader.read({ name, bytes: answer.rawPayload }, LIMITS);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const [header = [], ...rows] = result.tables[0]?.rows ?? [];
  const records = rows.map((row): Row =>
    Object.fromEntries<Cell>(
      header.map((title, at) => [typeof title === "string" ? title : "", row[at] ?? null]),
    ),
  );
  return { name, header, records, text: answer.rawPayload.toString("utf8"), headers: answer.headers };
}

/** What a clock in the plant shows, by the runtime's own formatter: "2026-11-30 05:00:00". */
function clockIn(iso: string): string {
  const shown = new Intl.DateTimeFormat("sv-SE", {
    timeZone: plant.timeZone,
    dateStyle: "short",
    timeStyle: "medium",
  });
  return shown.format(new Date(iso));
}

/** Cells as the format keeps them: CSV knows text only, a workbook numbers and dates. */
const asKept = {
  csv: {
    number: (value: number | null) => (value === null ? null : String(value)),
    moment: (iso: string | null) => (iso === null ? null : clockIn(iso)),
  },
  xlsx: {
    number: (value: number | null) => value,
    moment: (iso: string | null) =>
      iso === null ? null : { kind: "date", wallClock: clockIn(iso).replace(" ", "T") },
  },
};
/** To a ten-thousandth, so that one second shows. */
const inHours = (seconds: number): number => Number((seconds / 3600).toFixed(4));

const latest = async () => PlanResponse.parse((await get("/plans/latest")).json());
const book = async () => OrderBookResponse.parse((await get("/orders")).json());

async function putOrders(more: readonly Order[]): Promise<void> {
  const expectedRevision = (await book()).revision;
  const put = await api.app.commands.putOrders({ plantId, orders: more, expectedRevision }, localPlanner);
  if (!put.ok) throw new Error(put.error.cause);
}

async function planAnew(): Promise<void> {
  const payload = { steps: 50, seed: 7 };
  const asked = await api.server.inject({ method: "POST", url: `/api/plants/${plantId}/solves`, payload });
  const { runId } = asked.json<{ readonly runId: string }>();
  const run = async () => SolveRunResponse.parse((await get(`/solves/${runId}`)).json());
  await eventually("the run ends", async () => (await run()).state === "done");
}

describe("what can not be taken away says so", () => {
  const tables = ["/plans/latest/table", "/plans/unknown/table", "/orders/table"];

  test.each(tables)("%s of a plant that is not there", async (path) => {
    const problem = problemOf(await get(`${path}?format=csv`, "elsewhere"));
    expect(problem).toMatchObject({ code: "not-found", status: 404, title: "There is no such plant." });
  });

  test.each(FORMATS)("a plan before there is one, as %s", async (format) => {
    const problem = problemOf(await get(`/plans/latest/table?format=${format}`));
    expect(problem).toMatchObject({ code: "not-found", status: 404, title: "There is no plan yet." });
    expect(problem.remedy).toContain("Start a planning run");
  });

  test.each(tables)("%s in a format that is not known, or in none", async (path) => {
    for (const query of ["?format=pdf", "?format=CSV", "?format=csv&format=xlsx", ""]) {
      const problem = problemOf(await get(`${path}${query}`));
      expect(problem, query).toMatchObject({ code: "invalid-request", status: 400 });
      expect(problem.faults[0]?.path).toBe("format");
      expect(problem.faults[0]?.problem).toMatch(query.includes("&") ? /./ : /csv.*xlsx/);
    }
  });
});

describe("the order book before a plan", () => {
  test("has German headings where the page asks for them, and no third language", async () => {
    const german = await get("/orders/table?format=csv&language=de");
    expect(german.statusCode).toBe(200);
    const [head = "", row = ""] = german.rawPayload.toString("utf8").split("\r\n");
    expect(head).toMatch(/Auftrag,Kunde,Artikel,/);
    expect(head).not.toMatch(/order|customer|due/);
    expect(row).toContain("noch nicht geplant");
    const problem = problemOf(await get("/orders/table?format=csv&language=fr"));
    expect(problem.faults).toMatchObject([
      { path: "language", cause: { kind: "value not listed", listed: ["en", "de"] } },
    ]);
  });

  test.each(FORMATS)("says of every order that it is not planned yet, as %s", async (format) => {
    const { records } = await taken("/orders/table", format);
    expect(records).toHaveLength(orders.length);
    for (const record of records)
      expect(record).toMatchObject({ state: "not planned yet", "planned finish": null, "slack hours": null });
  });
});

describe("a planned plant", () => {
  beforeAll(async () => {
    // more than any line makes in the horizon, so that one order has reasons
    await putOrders([Order.parse({ ...first, id: "too much", pieces: 1_000_000_000 })]);
    await planAnew();
  });

  test.each(FORMATS)("gives one row a run, in order of line and start, as %s", async (format) => {
    const { document, planId } = await latest();
    const { number, moment } = asKept[format];
    const { records, header } = await taken(`/plans/${planId}/table`, format);
    const teams = new Map<string, string>(plant.setterTeams.map(({ id, name }) => [id, name]));
    const lines = document.lines.map(({ id }) => id);
    const runs = document.segments
      .filter((segment) => segment.kind === "run")
      .sort((a, b) => lines.indexOf(a.lineId) - lines.indexOf(b.lineId) || (a.start < b.start ? -1 : 1));
    expect(runs.length).toBeGreaterThan(3);
    expect(records).toHaveLength(runs.length);
    expect(header).toContain("time zone");
    let isAfterChange = false;
    runs.forEach((run, at) => {
      const before = runs[at - 1]?.lineId === run.lineId ? (runs[at - 1]?.end ?? "") : "";
      const changes = document.segments.filter(
        (segment) =>
          segment.kind === "change" &&
          segment.lineId === run.lineId &&
          segment.start >= before &&
          segment.end <= run.start,
      );
      const minutes = changes.reduce((sum, one) => sum + (one.kind === "change" ? one.minutes : 0), 0);
      const team = changes.flatMap((one) => (one.kind === "change" ? (one.teamId ?? []) : []))[0];
      isAfterChange ||= minutes > 0 && team !== undefined;
      const lot = document.lots.find((one) => one.orderId === run.orderId && one.lot === run.lot);
      expect(records[at]).toMatchObject({
        order: run.orderId,
        lot: number(run.lot + 1),
        customer: run.customer,
        product: run.productId,
        "product name": run.productName,
        line: run.lineId,
        mould: run.mould?.mouldId,
        "mould copy": number(run.mould?.copy ?? null),
        "mould name": run.mouldName,
        sheet: run.sheetId,
        "sheet name": run.sheetName,
        pieces: number(run.pieces),
        start: moment(run.start),
        end: moment(run.end),
        "lot finish": moment(lot?.finish ?? null),
        due: moment(run.due),
        "order hours late": number(inHours(run.lateSeconds)),
        "change before min": number(Number(minutes.toFixed(1))),
        "time zone": plant.timeZone,
      });
      expect(records[at]?.["setter team"] ?? "").toContain(team === undefined ? "" : teams.get(team));
    });
    // else the columns of the change were never put to the test
    expect(isAfterChange).toBe(true);
  });

  test.each(FORMATS)("gives the newest plan at its address, as %s", async (format) => {
    const { planId } = await latest();
    const newest = await taken("/plans/latest/table", format);
    expect(newest.records).toEqual((await taken(`/plans/${planId}/table`, format)).records);
  });

  test.each(FORMATS)("gives the order book with each order's state, as %s", async (format) => {
    const { number, moment } = asKept[format];
    const { records } = await taken("/orders/table", format);
    const booked = (await book()).orders;
    expect(records.map(({ order }) => order)).toEqual(booked.map(({ id }) => id));
    for (const [at, order] of booked.entries()) {
      expect(records[at]).toMatchObject({
        customer: order.customer,
        product: order.productId,
        kind: order.kind,
        pieces: number(order.pieces),
        due: moment(order.dueAt),
        state: order.state,
        "planned finish": moment(order.finish),
        "slack hours": number(order.slackSeconds === null ? null : inHours(order.slackSeconds)),
        "covered by stock pieces": number(order.fromStockPieces),
        "to make pieces": number(order.toMakePieces),
        "unplanned because":
          order.reasons.length === 0
            ? null
            : order.reasons
                .map(({ lineId, text }) => (lineId === null ? text : `${lineId}: ${text}`))
                .join(" "),
        "time zone": plant.timeZone,
      });
    }
    expect(records.some((record) => record["planned finish"] !== null)).toBe(true);
    expect(records.some((record) => record["unplanned because"] !== null)).toBe(true);
  });

  test("names files by plant and date, and their kind by media type", async () => {
    const { createdAt } = await latest();
    const made = clockIn(createdAt).slice(0, 16).replace(" ", "-").replace(":", "");
    const csv = await taken("/plans/latest/table", "csv");
    expect(csv.name).toBe(`${plantId}-plan-${made}.csv`);
    expect(csv.headers["content-type"]).toBe("text/csv; charset=utf-8");
    const today = (): string => clockIn(new Date().toISOString()).slice(0, 10);
    const asked = today();
    const xlsx = await taken("/orders/table", "xlsx");
    // two days, should midnight pass meanwhile
    const names = [asked, today()].map((day) => `${plantId}-order-book-${day}.xlsx`);
    expect(names).toContain(xlsx.name);
    expect(xlsx.headers["content-type"]).toContain("spreadsheetml.sheet");
    expect(xlsx.headers["cache-control"]).toBe("no-store");
  });

  test("does not give away another plant's plan", async () => {
    const { planId } = await latest();
    const other = await fillPlant(api.app);
    const problem = problemOf(await get(`/plans/${planId}/table?format=csv`, other));
    expect(problem).toMatchObject({ code: "not-found", status: 404, title: "There is no such plan." });
    expect(problem.cause).toContain(planId);
  });
});

describe("text that a spreadsheet could take for more", () => {
  /** Beginnings of a formula by OWASP, "CSV Injection" (from memory); ASVS 5.0, 1.2.10 asks for the apostrophe. */
  const formulas = ["=1+1", "+49 30 5550", "-5", "@SUM(A1)", "\t=1+1", "\r=1+1", "'=1+1"];
  /** Quotes, commas and line breaks, which RFC 4180, section 2, rules 6 and 7, put in quotes. */
  const quoted = 'Alder "and sons", north\r\nsecond line';

  beforeAll(async () => {
    const hostile = [...formulas, quoted].map((customer, at) => ({
      ...first,
      id: OrderId.parse(`N-${at}`),
      customer,
    }));
    await putOrders(hostile);
    await planAnew();
  });

  test.each([
    ["/orders/table", "csv"],
    ["/orders/table", "xlsx"],
    ["/plans/latest/table", "csv"],
    ["/plans/latest/table", "xlsx"],
  ] as const)("in %s as %s stays text", async (path, format) => {
    const { records } = await taken(path, format);
    const customers = records
      .filter(({ order }) => /^N-/.test(typeof order === "string" ? order : ""))
      .map(({ customer }) => customer);
    expect(new Set(customers)).toEqual(new Set([...formulas.map((text) => `'${text}`), quoted]));
    const texts = records
      .flatMap((record) => Object.values(record))
      .filter((cell) => typeof cell === "string");
    const isNumber = (text: string): boolean => format === "csv" && /^-\d+(\.\d+)?$/.test(text);
    expect(texts.filter((text) => /^[=+\-@\t\r]/.test(text) && !isNumber(text))).toEqual([]);
  });

  test("is quoted in CSV with its quotes doubled, and every line ends in CRLF", async () => {
    const { text } = await taken("/orders/table", "csv");
    expect(text.startsWith("\ufefforder,customer,")).toBe(true);
    expect(text).toContain('N-7,"Alder ""and sons"", north\r\nsecond line",');
    expect(text.endsWith("\r\n")).toBe(true);
    expect(text).not.toMatch(/[^\r]\n/);
  });
});
