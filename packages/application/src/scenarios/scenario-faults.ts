import type { FieldFault } from "../errors.ts";
import { hoursFaults } from "../planning/hours-faults.ts";
import { spanOfClosing } from "../planning/hours-span.ts";
import { isoInstant } from "../planning/iso-instant.ts";
import { applyChange } from "./apply-scenario.ts";
import { changeFault, shownAt } from "./change-fault.ts";
import type { ScenarioGround } from "./scenario-ground.ts";
import { cancelFaults, changedOrderFaults, rushFaults } from "./order-faults.ts";
import { copiesFaults, rateFaults, teamFaults } from "./plant-change-faults.ts";
import type { ScenarioChange } from "./scenario-change.ts";

/** Everything against a list of changes, each held against what those before it leave; paths lead into the list. */
export function scenarioFaults(
  changes: readonly ScenarioChange[],
  ground: ScenarioGround,
): readonly FieldFault[] {
  const places = new Map<string, number>();
  const faults: FieldFault[] = [];
  let { snapshot } = ground;
  for (const [index, change] of changes.entries()) {
    const { key, field } = subjectOf(change);
    const first = places.get(key);
    const own =
      first === undefined ? faultsOf(change, { ...ground, snapshot }) : [changedTwice(field, first + 1)];
    if (first === undefined) places.set(key, index);
    if (own.length === 0) snapshot = applyChange(snapshot, change);
    faults.push(...own.map((fault) => ({ ...fault, path: `changes.${index}.${fault.path}` })));
  }
  return faults;
}

function faultsOf(change: ScenarioChange, ground: ScenarioGround): readonly FieldFault[] {
  switch (change.kind) {
    case "close line": {
      const faults = hoursFaultsOf(change, ground);
      return faults.length > 0 ? faults : frozenFaults(change, ground);
    }
    case "add shift":
      return hoursFaultsOf(change, ground);
    case "more copies":
      return copiesFaults(change, ground);
    case "another team":
      return teamFaults(change, ground);
    case "cycle rate":
      return rateFaults(change, ground);
    case "cancel order":
      return cancelFaults(change.orderId, ground);
    case "rush order":
      return rushFaults(change.order, ground);
    case "change order":
      return changedOrderFaults(change, ground);
  }
}

/** What a change is about, and the field that names it: one change each. */
function subjectOf(change: ScenarioChange): { readonly key: string; readonly field: string } {
  switch (change.kind) {
    case "close line":
      return { key: JSON.stringify(change), field: "closure" };
    case "add shift":
      return { key: JSON.stringify(change), field: "shift" };
    case "another team":
      return { key: JSON.stringify(change), field: "name" };
    case "more copies":
      return { key: JSON.stringify([change.kind, change.mouldId]), field: "mouldId" };
    case "cycle rate":
      return { key: JSON.stringify([change.kind, change.lineId, change.mouldId]), field: "lineId" };
    case "rush order":
      return { key: JSON.stringify(["order", change.order.id]), field: "order.id" };
    case "cancel order":
    case "change order":
      return { key: JSON.stringify(["order", change.orderId]), field: "orderId" };
  }
}

const changedTwice = (field: string, first: number): FieldFault =>
  changeFault(
    field,
    { kind: "changed twice", first },
    `Change ${first} is about the same.`,
    "Make one change of the two, or leave one out.",
  );

type HoursChange = Extract<ScenarioChange, { readonly kind: "close line" | "add shift" }>;

/** As for a change of hours that is made at once, but for the start of the paths. */
function hoursFaultsOf(change: HoursChange, { snapshot, horizon }: ScenarioGround): readonly FieldFault[] {
  return hoursFaults(change, { plant: snapshot.plant, horizon }).map((fault) => ({
    ...fault,
    path: fault.path.replace(/^edit\./, ""),
  }));
}

function frozenFaults(
  { closure }: Extract<ScenarioChange, { readonly kind: "close line" }>,
  { snapshot: { plant }, frozenRuns }: ScenarioGround,
): readonly FieldFault[] {
  const span = spanOfClosing(closure, plant);
  return frozenRuns
    .filter(({ lineId, start, end }) => lineId === closure.lineId && start < span.end && span.start < end)
    .map(({ orderId, lineId, start }) =>
      changeFault(
        "closure.from",
        { kind: "run frozen", orderId, lineId, at: isoInstant(start) },
        `Order ${orderId} runs there from ${shownAt(plant.timeZone, start)} in the plan that was given out, and is frozen.`,
        "Close the line for a spell beside that run, or leave the change out.",
      ),
    );
}
