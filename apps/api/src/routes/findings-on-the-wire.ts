import {
  isoInstant,
  type FoundRemedy,
  type RemedyAction,
  type RunFindings,
  type TriedChange,
} from "@formweek/application";
import type { RemedyChange } from "@formweek/contracts";
import { changeOnTheWire as scenarioChangeOnTheWire } from "./scenarios-on-the-wire.ts";

/** What a run found, without the plans themselves: they are chosen by their place. */
export function findingsOnTheWire(findings: RunFindings) {
  if (findings.kind === "trade-off") {
    const { criteria, plans } = findings;
    return {
      kind: "trade-off" as const,
      criteria: [...criteria],
      plans: plans.map(({ figures, values, leastIn }) => ({
        figures,
        values: [...values],
        leastIn: [...leastIn],
      })),
    };
  }
  if (findings.kind === "scenarios")
    return { kind: "scenarios" as const, scenarioIds: [...findings.scenarioIds] };
  if (findings.kind === "help") {
    const { without, tried, changes } = findings;
    return { kind: "help" as const, without, tried, changes: changes.map(triedOnTheWire) };
  }
  const { planId, orderId, before, orderLateSeconds, tried, remedies } = findings;
  return {
    kind: "remedies" as const,
    planId,
    orderId,
    before,
    orderLateSeconds,
    tried,
    remedies: remedies.map(remedyOnTheWire),
  };
}

const triedOnTheWire = ({ change, with: changed, turned }: TriedChange) => ({
  change: scenarioChangeOnTheWire(change),
  with: changed,
  turned: turned.map((order) => ({ ...order })),
});

function remedyOnTheWire({ action, after, orderLateSeconds }: FoundRemedy) {
  return { action: actionOnTheWire(action), after, orderLateSeconds };
}

function actionOnTheWire(action: RemedyAction) {
  return action.kind === "change"
    ? { kind: "change" as const, change: changeOnTheWire(action.edit) }
    : action;
}

type Change = Extract<RemedyAction, { kind: "change" }>["edit"];

function changeOnTheWire(edit: Change): RemedyChange {
  switch (edit.kind) {
    case "extra shift":
    case "extra team":
      return { ...edit, from: isoInstant(edit.from), to: isoInstant(edit.to) };
    case "extra operators": {
      const { poolId, hundredths, from, to } = edit;
      return {
        kind: "extra operators",
        poolId,
        heads: hundredths / 100,
        from: isoInstant(from),
        to: isoInstant(to),
      };
    }
    case "mould copy":
    case "earlier sheet":
    case "lots":
      return edit;
    case "another line":
      return { kind: "another line", orderId: edit.orderId, lineId: edit.option.lineId };
    case "earlier start":
    case "later due":
      return { ...edit, at: isoInstant(edit.at) };
    case "line down":
    case "order cancelled":
    case "rush order":
      throw new Error(`"${edit.kind}" was offered as a remedy`);
  }
}
