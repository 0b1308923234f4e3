import fc from "fast-check";
import { workingTimeOf, type WorkingTime } from "@formweek/capacity-model";
import { NO_TERMS } from "../helpers/no-terms.ts";
import type { ChangeSpec, Job, JobOption, ProblemData } from "@formweek/scheduler";

const HOUR = 3600;
const DAY = 24 * HOUR;
/** A Monday, 00:00 UTC: 2026-11-30. */
const MONDAY = 1_795_996_800;

/** Which rules a random problem may use; all on by default. */
export interface ProblemShape {
  readonly lines: number;
  readonly jobs: number;
  readonly moulds: number;
  readonly days: number;
  readonly pins: boolean;
  readonly services: boolean;
  readonly heads: boolean;
  readonly sheets: boolean;
  readonly calendars: boolean;
  readonly teamWork: boolean;
  readonly lots: boolean;
  /** Instants after which orders may not start. */
  readonly latestStarts: boolean;
  /** Prices on overtime, earliness, load balance and distance from the published plan. */
  readonly terms: boolean;
}

export const SMALL_PLANT: ProblemShape = {
  lines: 3,
  jobs: 8,
  moulds: 4,
  days: 7,
  pins: true,
  services: true,
  heads: true,
  sheets: true,
  calendars: true,
  teamWork: true,
  lots: true,
  latestStarts: true,
  terms: true,
};

function shiftsOf(days: number, firstHour: number, hours: number, skipDay: number): WorkingTime {
  const spells: [number, number][] = [];
  for (let day = -1; day < days + 1; day++) {
    if (day % 7 === skipDay) continue;
    const start = MONDAY + day * DAY + firstHour * HOUR;
    spells.push([start, start + hours * HOUR]);
  }
  return workingTimeOf(spells);
}

function calendarArb(shape: ProblemShape): fc.Arbitrary<WorkingTime> {
  const always = workingTimeOf([[MONDAY - DAY, MONDAY + (shape.days + 1) * DAY]]);
  if (!shape.calendars) return fc.constant(always);
  return fc.oneof(
    { weight: 1, arbitrary: fc.constant(always) },
    {
      weight: 3,
      arbitrary: fc
        .tuple(
          fc.integer({ min: 0, max: 12 }),
          fc.integer({ min: 4, max: 20 }),
          fc.integer({ min: -1, max: 6 }),
        )
        .map(([firstHour, hours, skipDay]) => shiftsOf(shape.days, firstHour, hours, skipDay)),
    },
  );
}

/** Changes between all pairs of set-ups, drawn per pair from a few specs: -1 on the diagonal. */
function matrixArb(setups: number, stripped: number, specs: number): fc.Arbitrary<number[][]> {
  const cell = fc.integer({ min: 0, max: specs - 1 });
  return fc
    .array(fc.array(cell, { minLength: setups, maxLength: setups }), { minLength: setups, maxLength: setups })
    .map((rows) =>
      rows.map((row, from) => row.map((spec, to) => (from === to ? -1 : to === stripped ? specs : spec))),
    );
}

function specArb(shape: ProblemShape): fc.Arbitrary<ChangeSpec> {
  const minutes = (max: number): fc.Arbitrary<number> =>
    fc.integer({ min: 0, max }).map((count) => count * 60);
  return fc
    .record({
      dismountSeconds: shape.teamWork ? minutes(60) : fc.constant(0),
      mountSeconds: shape.teamWork ? minutes(90) : fc.constant(0),
      tailSeconds: minutes(120),
      usesTrolley: fc.boolean(),
      scrapKg: fc.integer({ min: 0, max: 20 }),
    })
    .map((spec) => ({ ...spec, tasks: [] }));
}

interface Drawn {
  readonly shape: ProblemShape;
  readonly sheetCount: number;
  readonly setupIds: readonly string[];
}

const splitArb = fc.record({
  most: fc.integer({ min: 1, max: 5 }),
  leastPieces: fc.integer({ min: 1, max: 4000 }),
  unitPieces: fc.constantFrom(1, 48, 500),
});

function jobArb({ shape, sheetCount, setupIds }: Drawn, index: number): fc.Arbitrary<Job> {
  const option: fc.Arbitrary<JobOption> = fc.record({
    lineId: fc.integer({ min: 0, max: shape.lines - 1 }).map((l) => `L${l}`),
    setupId: fc.constantFrom(...setupIds.filter((id) => id !== "bare")),
    secondsPerPiece: fc.integer({ min: 10, max: 80 }).map((tenths) => tenths / 10),
    piecesPerCycle: fc.constantFrom(1, 4, 12),
  });
  return fc
    .record({
      pieces: fc.integer({ min: 1, max: 12_000 }),
      dueHours: fc.integer({ min: 4, max: shape.days * 24 }),
      startHours: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: shape.days * 12 })),
      weight: fc.integer({ min: 1, max: 5 }),
      conditioningHours: fc.constantFrom(0, 0, 6),
      holdingWeight: fc.constantFrom(0, 1, 3),
      published: fc.option(
        fc.record({
          line: fc.integer({ min: 0, max: shape.lines - 1 }),
          hour: fc.integer({ min: -10, max: shape.days * 24 }),
        }),
      ),
      split: shape.lots ? fc.option(splitArb) : fc.constant(null),
      latestHours: shape.latestStarts
        ? fc.oneof(
            { weight: 3, arbitrary: fc.constant(null) },
            { weight: 1, arbitrary: fc.integer({ min: 0, max: shape.days * 24 }) },
          )
        : fc.constant(null),
      sheet: fc.integer({ min: 0, max: sheetCount - 1 }),
      options: fc.uniqueArray(option, {
        minLength: 0,
        maxLength: 4,
        selector: (o) => `${o.lineId} ${o.setupId}`,
      }),
    })
    .map((draw) => ({
      orderId: `O${index}`,
      productId: `P${index}`,
      pieces: draw.pieces,
      dueAt: MONDAY + draw.dueHours * HOUR,
      earliestStartAt: MONDAY + draw.startHours * HOUR,
      ...(draw.latestHours === null ? {} : { latestStartAt: MONDAY + draw.latestHours * HOUR }),
      weight: draw.weight,
      conditioningSeconds: draw.conditioningHours * HOUR,
      holdingWeight: draw.holdingWeight,
      ...(draw.published === null
        ? {}
        : {
            published: { lineIds: [`L${draw.published.line}`], startAt: MONDAY + draw.published.hour * HOUR },
          }),
      sheetId: shape.sheets ? `S${draw.sheet}` : null,
      sheetKgPerPiece: 0.01,
      options: draw.options,
      refusals: [],
      ...(draw.split === null
        ? {}
        : { lots: { ...draw.split, leastPieces: Math.min(draw.pieces, draw.split.leastPieces) } }),
    }));
}

function pinsArb(shape: ProblemShape): fc.Arbitrary<ProblemData["pins"]> {
  if (!shape.pins) return fc.constant([]);
  const some = fc.record({
    job: fc.integer({ min: 0, max: shape.jobs - 1 }),
    line: fc.integer({ min: 0, max: shape.lines - 1 }),
    kind: fc.constantFrom("line", "sequence", "start"),
    hour: fc.integer({ min: 0, max: shape.days * 24 }),
  });
  return fc.uniqueArray(some, { maxLength: 3, selector: (pin) => pin.job }).map((draws) =>
    draws.map((draw, i) => ({
      orderId: `O${draw.job}`,
      lineId: `L${draw.line}`,
      startAt: draw.kind === "start" ? MONDAY + draw.hour * HOUR : null,
      sequence: draw.kind === "sequence" ? i : null,
    })),
  );
}

const TERM_PRICES = {
  overtimePerHour: 18,
  earlinessPerWeightHour: 0.5,
  balancePerHour: 4,
  movedLinePerOrder: 30,
  movedStartPerHour: 2,
};

/** Random small plants in which every rule of timing can bite. Always free of faults. */
export function problemArb(shape: ProblemShape = SMALL_PLANT): fc.Arbitrary<ProblemData> {
  const setups = [
    { id: "bare", mouldId: null, sheetId: null, strippedId: "bare" },
    ...Array.from({ length: shape.moulds }, (_, m) => [
      { id: `M${m}/a`, mouldId: `M${m}`, sheetId: "S0", strippedId: "bare" },
      { id: `M${m}/b`, mouldId: `M${m}`, sheetId: "S1", strippedId: "bare" },
    ]).flat(),
  ];
  const setupIds = setups.map((setup) => setup.id);
  const horizon = { start: MONDAY, end: MONDAY + shape.days * DAY };
  const lineArb = fc.record({
    workingTime: calendarArb(shape),
    overtime: fc.integer({ min: 0, max: 20 }).map((hour) => shiftsOf(shape.days, hour, 4, 1)),
    changeClassId: fc.constantFrom("A", "B"),
    trolleyId: fc.constantFrom(null, "T"),
    poolId: fc.constantFrom(null, "C"),
    operatorsHundredths: shape.heads ? fc.integer({ min: 0, max: 150 }) : fc.constant(0),
    restartLimitSeconds: fc.constantFrom(0, HOUR, 10 * HOUR),
    restartWarmUpSeconds: fc.constantFrom(0, 600, 2 * HOUR),
    mounted: fc.option(fc.integer({ min: 0, max: shape.moulds * 2 })),
    freeAt: fc.constantFrom(MONDAY - HOUR, MONDAY, MONDAY + 5 * HOUR),
  });
  const mouldArb = fc.record({
    copies: fc.constantFrom(1, 1, 2),
    carryingSeconds: fc.constantFrom(0, 900, HOUR),
    service: shape.services
      ? fc.option(fc.integer({ min: 24, max: shape.days * 24 }), { freq: 3 })
      : fc.constant(null),
    cycles: shape.services
      ? fc.option(
          fc.record({
            afterCycles: fc.constantFrom(1, 500, 2000, 12_000),
            seconds: fc.constantFrom(1, 1800, 8 * HOUR),
            cyclesDone: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 1 }),
          }),
        )
      : fc.constant(null),
  });
  const supply: fc.Arbitrary<{ stockKg: number | null; arrivals: { at: number; kg: number }[] }> =
    shape.sheets
      ? fc.record({
          stockKg: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 300 })),
          arrivals: fc.array(
            fc.record({
              at: fc.integer({ min: 0, max: shape.days * 24 }),
              kg: fc.integer({ min: 0, max: 200 }),
            }),
            { maxLength: 3 },
          ),
        })
      : fc.constant({ stockKg: null, arrivals: [] });
  return fc
    .record({
      lines: fc.array(lineArb, { minLength: shape.lines, maxLength: shape.lines }),
      moulds: fc.array(mouldArb, { minLength: shape.moulds, maxLength: shape.moulds }),
      specs: fc.array(specArb(shape), { minLength: 3, maxLength: 5 }),
      strip: specArb(shape),
      teams: fc.array(calendarArb(shape), { minLength: 1, maxLength: 2 }),
      crews: fc.array(
        fc.record({ workingTime: calendarArb(shape), hundredths: fc.integer({ min: 0, max: 200 }) }),
        { minLength: 1, maxLength: 2 },
      ),
      supplies: fc.array(supply, { minLength: 2, maxLength: 2 }),
      jobs: fc.tuple(
        ...Array.from({ length: shape.jobs }, (_, j) => jobArb({ shape, sheetCount: 2, setupIds }, j)),
      ),
      pins: pinsArb(shape),
      priced: shape.terms ? fc.boolean() : fc.constant(false),
    })
    .chain((draw) =>
      fc
        .tuple(matrixArb(setups.length, 0, draw.specs.length), matrixArb(setups.length, 0, draw.specs.length))
        .map(([a, b]) => {
          const taken = new Set<string>();
          return {
            horizon,
            lines: draw.lines.map(({ mounted, ...line }, l) => {
              const setup = mounted === null ? undefined : setups[mounted];
              const mouldId = setup?.mouldId ?? null;
              const twice = mouldId !== null && taken.has(mouldId);
              if (mouldId !== null) taken.add(mouldId);
              const initial =
                setup === undefined
                  ? null
                  : twice
                    ? { setupId: "bare", copy: null }
                    : { setupId: setup.id, copy: mouldId === null ? null : 0 };
              return { id: `L${l}`, ...line, initial };
            }),
            moulds: draw.moulds.map(({ service, cycles, ...mould }, m) => ({
              id: `M${m}`,
              ...mould,
              ...(cycles === null ? {} : { service: cycles }),
              outOfService:
                service === null
                  ? []
                  : [{ copy: 0, start: MONDAY + service * HOUR, end: MONDAY + (service + 12) * HOUR }],
            })),
            setups,
            changeClasses: [
              { id: "A", matrix: a },
              { id: "B", matrix: b },
            ],
            changes: [...draw.specs, { ...draw.strip, mountSeconds: 0 }],
            teams: draw.teams.map((workingTime, t) => ({ id: `team ${t}`, workingTime })),
            trolleys: [{ id: "T" }],
            pools: [{ id: "C", crews: draw.crews }],
            sheets: draw.supplies.map((sheet, s) => ({
              id: `S${s}`,
              stockKg: sheet.stockKg,
              arrivals: sheet.arrivals.map(({ at, kg }) => ({ at: MONDAY + at * HOUR, kg })),
            })),
            jobs: draw.jobs,
            pins: consistentPins(draw.pins),
            changeAwaitsEarliestStart: false,
            objective: {
              tardinessPerWeightHour: 10,
              lateOrderPerWeight: 50,
              changePerMachineHour: 40,
              changePerTeamHour: 25,
              scrapPerKg: 1.5,
              ...(draw.priced ? TERM_PRICES : NO_TERMS),
              unplannedPerWeight: 10_000,
              makespanPerHour: 0,
            },
          };
        }),
    );
}

/** Drops the sequence of pins whose fixed starts would contradict it. */
function consistentPins(pins: ProblemData["pins"]): ProblemData["pins"] {
  return pins.map((pin) => (pin.startAt === null ? pin : { ...pin, sequence: null }));
}
