import type { ProblemFault } from "../result.ts";
import { duplicateFaults, fault, isAmount, isDuration } from "./fault.ts";
import { priceFaults } from "./validate-prices.ts";
import type { ProblemData, ProblemLine, ProblemMould } from "./problem-data.ts";

function mouldFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "mould",
    data.moulds.map((mould) => mould.id),
  );
  for (const mould of data.moulds) {
    const spells = mould.outOfService.every(
      ({ start, end }) => Number.isSafeInteger(start) && Number.isSafeInteger(end),
    );
    if (!Number.isInteger(mould.copies) || mould.copies < 0 || mould.copies > 10_000) {
      faults.push(
        fault(
          "mould-copies",
          mould.id,
          `Mould ${mould.id} has ${mould.copies} copies.`,
          "Give a whole number from 0 on.",
        ),
      );
    } else if (!isDuration(mould.carryingSeconds) || !spells) {
      faults.push(
        fault(
          "mould-times",
          mould.id,
          `Mould ${mould.id} has a time that is not in whole seconds.`,
          "Correct its carrying time and service spells.",
        ),
      );
    } else faults.push(...serviceFaults(mould));
  }
  return faults;
}

function serviceFaults({ id, copies, service }: ProblemMould): ProblemFault[] {
  if (service === undefined) return [];
  const { afterCycles, seconds, cyclesDone } = service;
  const isCount = (value: number) => Number.isSafeInteger(value) && value >= 0;
  const isSound = isCount(afterCycles) && afterCycles >= 1 && isDuration(seconds) && seconds >= 1;
  if (isSound && cyclesDone.length <= copies && cyclesDone.every(isCount)) return [];
  const text = `Mould ${id} is served for ${seconds} s after ${afterCycles} cycles, its ${copies} copies having done ${cyclesDone.join(", ")}.`;
  const remedy =
    "Give whole numbers: cycles and seconds from 1 on, cycles done from 0 on for no more than its copies.";
  return [fault("mould-service", id, text, remedy)];
}

function setupFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "set-up",
    data.setups.map((setup) => setup.id),
  );
  const moulds = new Set(data.moulds.map((mould) => mould.id));
  const byId = new Map(data.setups.map((setup) => [setup.id, setup]));
  for (const setup of data.setups) {
    if (setup.mouldId !== null && !moulds.has(setup.mouldId)) {
      faults.push(
        fault(
          "unknown-mould",
          setup.id,
          `Set-up ${setup.id} names the unknown mould ${setup.mouldId}.`,
          "Add the mould or correct the set-up.",
        ),
      );
    }
    const stripped = byId.get(setup.strippedId);
    if (stripped === undefined || (setup.mouldId !== null && stripped.mouldId !== null)) {
      faults.push(
        fault(
          "stripped-state",
          setup.id,
          `The state of set-up ${setup.id} without its mould is missing.`,
          "Name a set-up that holds no mould.",
        ),
      );
    }
  }
  return faults;
}

function changeFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "change class",
    data.changeClasses.map((each) => each.id),
  );
  data.changes.forEach((spec, i) => {
    const times = [spec.dismountSeconds, spec.mountSeconds, spec.tailSeconds];
    if (!times.every(isDuration) || !isAmount(spec.scrapKg)) {
      faults.push(
        fault(
          "change-times",
          `${i}`,
          `Change ${i} has a duration or scrap that is not a number from 0 on.`,
          "Correct its durations and scrap.",
        ),
      );
    }
  });
  const n = data.setups.length;
  const indexOf = new Map(data.setups.map((setup, s) => [setup.id, s]));
  for (const { id, matrix } of data.changeClasses) {
    const square = matrix.length === n && matrix.every((row) => row.length === n);
    const known =
      square &&
      matrix.every((row) =>
        row.every((spec) => Number.isInteger(spec) && spec >= -1 && spec < data.changes.length),
      );
    if (!known) {
      faults.push(
        fault(
          "change-matrix",
          id,
          `The change matrix of ${id} does not fit the set-ups and changes.`,
          "Give one known change, or none, for each pair of set-ups.",
        ),
      );
      continue;
    }
    data.setups.forEach((setup, s) => {
      const stripped = indexOf.get(setup.strippedId);
      if (setup.mouldId === null || stripped === undefined || matrix[s]![stripped]! >= 0) return;
      faults.push(
        fault(
          "stripping-undefined",
          setup.id,
          `Change class ${id} does not say how set-up ${setup.id} is stripped of its mould.`,
          "Give the change to its stripped state.",
        ),
      );
    });
  }
  return faults;
}

function initialFaults(data: ProblemData, line: ProblemLine, taken: Set<string>): ProblemFault[] {
  if (line.initial === null) return [];
  const setup = data.setups.find((each) => each.id === line.initial?.setupId);
  if (setup === undefined) {
    return [
      fault(
        "unknown-setup",
        line.id,
        `Line ${line.id} holds the unknown set-up ${line.initial.setupId}.`,
        "Correct what is mounted.",
      ),
    ];
  }
  const mould = data.moulds.find((each) => each.id === setup.mouldId);
  if (mould === undefined) return [];
  const copy = line.initial.copy ?? -1;
  const key = JSON.stringify([mould.id, copy]);
  const remedy = "Correct what is mounted on the line.";
  if (!Number.isInteger(copy) || copy < 0 || copy >= mould.copies) {
    return [
      fault(
        "mounted-copy-unknown",
        line.id,
        `Line ${line.id} holds a copy of mould ${mould.id} that does not exist.`,
        remedy,
      ),
    ];
  }
  if (taken.has(key)) {
    return [
      fault(
        "copy-mounted-twice",
        mould.id,
        `One copy of mould ${mould.id} hangs on two lines at once.`,
        remedy,
      ),
    ];
  }
  taken.add(key);
  return [];
}

function lineFaults(data: ProblemData): ProblemFault[] {
  const faults = duplicateFaults(
    "line",
    data.lines.map((line) => line.id),
  );
  const classes = new Set(data.changeClasses.map((each) => each.id));
  const trolleys = new Set(data.trolleys.map((trolley) => trolley.id));
  const pools = new Set(data.pools.map((pool) => pool.id));
  const taken = new Set<string>();
  for (const line of data.lines) {
    const missing = (what: string, id: string): ProblemFault =>
      fault(
        `unknown-${what.replace(" ", "-")}`,
        line.id,
        `Line ${line.id} names the unknown ${what} ${id}.`,
        `Add the ${what} or correct the line.`,
      );
    if (!classes.has(line.changeClassId)) faults.push(missing("change class", line.changeClassId));
    if (line.trolleyId !== null && !trolleys.has(line.trolleyId))
      faults.push(missing("trolley", line.trolleyId));
    if (line.poolId !== null && !pools.has(line.poolId)) faults.push(missing("operator pool", line.poolId));
    const heads =
      Number.isInteger(line.operatorsHundredths) &&
      line.operatorsHundredths >= 0 &&
      line.operatorsHundredths <= 1_000_000;
    if (
      !Number.isSafeInteger(line.freeAt) ||
      !isDuration(line.restartLimitSeconds) ||
      !isDuration(line.restartWarmUpSeconds) ||
      !heads
    ) {
      faults.push(
        fault(
          "line-numbers",
          line.id,
          `Line ${line.id} has a time or a number of operators that is not a whole number from 0 on.`,
          "Correct the line.",
        ),
      );
    }
    faults.push(...initialFaults(data, line, taken));
  }
  const { start, end } = data.horizon;
  const opens = (line: ProblemLine): boolean =>
    line.workingTime.starts.some((from, i) => from < end && line.workingTime.ends[i]! > start);
  if (data.jobs.length > 0 && !data.lines.some(opens)) {
    faults.push(
      fault(
        "plant-closed",
        "plant",
        "No line is open at any time within the horizon.",
        "Add shifts, lift the closures or move the horizon.",
      ),
    );
  }
  return faults;
}

function supplyFaults(data: ProblemData): ProblemFault[] {
  const faults = [
    ...duplicateFaults(
      "team",
      data.teams.map((team) => team.id),
    ),
    ...duplicateFaults(
      "trolley",
      data.trolleys.map((trolley) => trolley.id),
    ),
    ...duplicateFaults(
      "operator pool",
      data.pools.map((pool) => pool.id),
    ),
    ...duplicateFaults(
      "sheet",
      data.sheets.map((sheet) => sheet.id),
    ),
  ];
  for (const pool of data.pools) {
    if (
      pool.crews.every(
        ({ hundredths }) => Number.isInteger(hundredths) && hundredths >= 0 && hundredths <= 1_000_000,
      )
    )
      continue;
    faults.push(
      fault(
        "crew-size",
        pool.id,
        `A crew of ${pool.id} has a size that is not a whole number from 0 on.`,
        "Correct the crew.",
      ),
    );
  }
  for (const sheet of data.sheets) {
    const stock = sheet.stockKg === null || isAmount(sheet.stockKg);
    if (stock && sheet.arrivals.every(({ at, kg }) => Number.isSafeInteger(at) && isAmount(kg))) continue;
    faults.push(
      fault(
        "sheet-supply",
        sheet.id,
        `Sheet ${sheet.id} has a stock or an arrival that is not a number from 0 on.`,
        "Correct its stock and arrivals.",
      ),
    );
  }
  return faults;
}

/** Faults of lines, moulds, set-ups, changes, crews, sheets and prices. */
export function resourceFaults(data: ProblemData): ProblemFault[] {
  return [
    ...mouldFaults(data),
    ...setupFaults(data),
    ...changeFaults(data),
    ...lineFaults(data),
    ...supplyFaults(data),
    ...priceFaults(data),
  ];
}
