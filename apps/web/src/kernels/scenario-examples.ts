import type { ScenarioChange } from "@formweek/contracts";
import type { BoardPlan, BoardSpell } from "./board-plan.ts";
import type { ChangeGround } from "./scenario-draft.ts";
import { firstDraft, shiftOfDraft } from "./shift-draft.ts";
import { daysLater, instantOfWallText, wallText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

type ChangeOf<Kind extends ScenarioChange["kind"]> = Extract<ScenarioChange, { readonly kind: Kind }>;

/** Changes to start from, made of what the plant has; null where it has nothing to make them of. */
export interface ScenarioExamples {
  readonly shift: ChangeOf<"add shift"> | null;
  readonly copy: ChangeOf<"more copies"> | null;
}

/** A shift on the plan's first Saturday on the line, and one more set of the mould, behind which most late orders stand. */
export function scenarioExamples(ground: ChangeGround): ScenarioExamples {
  const { plan, plant, clock, unnamed } = ground;
  const lineId = mostLate(plan, "line") ?? plant.lines[0]?.id;
  const mouldId = mostLate(plan, "mould") ?? plant.moulds[0]?.id;
  const saturday = firstSaturday(plan, clock);
  const shift =
    lineId === undefined || saturday === null
      ? null
      : shiftOfDraft(ground, firstDraft(ground, lineId, saturday), unnamed.shift);
  return {
    shift: shift === null ? null : { kind: "add shift", shift },
    copy: mouldId === undefined ? null : { kind: "more copies", mouldId, more: 1 },
  };
}

/** Line or mould with the most late orders; without late orders, with the most runs. Null: nothing runs. */
function mostLate(plan: BoardPlan, of: "line" | "mould"): string | null {
  const late = new Set(plan.lateOrderIds);
  const counts = new Map<string, number>();
  for (const { source } of plan.segments) {
    if (source.kind !== "run" || (late.size > 0 && !late.has(source.orderId))) continue;
    const id = of === "line" ? source.lineId : source.mould?.mouldId;
    if (id === undefined) continue;
    counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([a, less], [b, more]) => more - less || a.localeCompare(b, "en"));
  return most?.[0] ?? null;
}

/** The first Saturday that begins in the time that the plan tells of. */
function firstSaturday(plan: BoardPlan, clock: ZoneClock): BoardSpell | null {
  const saturday = 6;
  const midnight = instantOfWallText(clock, `${wallText(clock, plan.startAt).slice(0, 10)}T00:00`);
  if (midnight === null) return null;
  for (let days = 0; days < 8; days += 1) {
    const start = daysLater(clock, midnight, days);
    if (start < plan.startAt || clock.wallTimeAt(start).weekday !== saturday) continue;
    return start < plan.knownEndAt ? { start, end: daysLater(clock, start, 1) } : null;
  }
  return null;
}
