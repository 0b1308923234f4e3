import type { ScenarioChange } from "@formweek/contracts";
import type { BoardPlan, BoardSpell } from "./board-plan.ts";
import type { ChangeGround } from "./scenario-draft.ts";
import { draftOfFree, freeShift, shiftOfDraft } from "./shift-draft.ts";
import { daysLater, instantOfWallText, wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

type ChangeOf<Kind extends ScenarioChange["kind"]> = Extract<ScenarioChange, { readonly kind: Kind }>;

/** Changes to start from, made of what the plant has; null where it has nothing to make them of. */
export interface ScenarioExamples {
  readonly shift: ChangeOf<"add shift"> | null;
  readonly copy: ChangeOf<"more copies"> | null;
}

/**
 * A shift on the plan's first weekend, and one more set of a mould: on the line and of the mould behind which most late orders
 * stand, as far as the line is free then.
 */
export function scenarioExamples(ground: ChangeGround): ScenarioExamples {
  const { plan, plant } = ground;
  const mouldId = byLateness(plan, "mould")[0] ?? plant.moulds[0]?.id;
  return {
    shift: exampleShift(ground),
    copy: mouldId === undefined ? null : { kind: "more copies", mouldId, more: 1 },
  };
}

function exampleShift(ground: ChangeGround): ScenarioExamples["shift"] {
  const { plan, plant, clock, unnamed } = ground;
  const whole = { start: plan.startAt, end: plan.knownEndAt };
  const lineIds = [...new Set([...byLateness(plan, "line"), ...plant.lines.map(({ id }) => id)])];
  for (const within of [firstWeekend(plan, clock) ?? whole, whole]) {
    for (const lineId of lineIds) {
      const free = freeShift(ground, lineId, within);
      const shift = free === null ? null : shiftOfDraft(ground, draftOfFree(free, lineId), unnamed.shift);
      if (shift !== null) return { kind: "add shift", shift };
    }
  }
  return null;
}

/** Lines or moulds, first those with the most late orders; without late orders those with the most runs. */
function byLateness(plan: BoardPlan, of: "line" | "mould"): readonly string[] {
  const late = new Set(plan.lateOrderIds);
  const counts = new Map<string, number>();
  for (const { source } of plan.segments) {
    if (source.kind !== "run" || (late.size > 0 && !late.has(source.orderId))) continue;
    const id = of === "line" ? source.lineId : source.mould?.mouldId;
    if (id === undefined) continue;
    counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return [...counts]
    .sort(([a, less], [b, more]) => more - less || a.localeCompare(b, "en"))
    .map(([id]) => id);
}

/** Saturday and Sunday of the first weekend that begins in the time that the plan tells of. */
function firstWeekend(plan: BoardPlan, clock: ZoneClock): BoardSpell | null {
  const saturday = 6;
  const midnight = instantOfWallText(clock, `${wallText(clock, plan.startAt).slice(0, 10)}T00:00`);
  if (midnight === null) return null;
  for (let days = 0; days < 8; days += 1) {
    const start = daysLater(clock, midnight, days);
    if (start < plan.startAt || clock.wallTimeAt(start).weekday !== saturday) continue;
    return start < plan.knownEndAt ? { start, end: daysLater(clock, start, 2) } : null;
  }
  return null;
}
