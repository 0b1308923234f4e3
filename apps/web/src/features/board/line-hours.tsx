import type { Plant } from "@formweek/capacity-model";
import { useState, type JSX } from "react";
import type { HoursEdit } from "@formweek/contracts";
import type { BoardPlan, BoardSpell } from "../../kernels/board-plan.ts";
import { useFormat } from "../../format/use-format.ts";
import { instantOfWallText } from "../../kernels/wall-text.ts";
import { shiftSpell } from "../../kernels/shift-offer.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";
import { AddShiftDialog } from "./add-shift-dialog.tsx";
import { CloseLineDialog } from "./close-line-dialog.tsx";
import { NotYetYours } from "./not-yet-yours.tsx";
import { useBoardStore } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface LineHoursProps {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly lineId: string;
  /** The free time from which it is asked; null: the plan's. */
  readonly within: BoardSpell | null;
}

/** Hours of a line that a planner may change: its closures and added shifts, with the ways to make and to end them. */
export function LineHours({ plan, plant, lineId, within }: LineHoursProps): JSX.Element {
  const { hours: text } = useText();
  const store = useBoardStore();
  const { take, isReady, isProvisional } = usePlanEdits();
  const [isOpen, setOpen] = useState<"closing" | "shift" | null>(null);
  const own = ownHours(plan, plant, lineId);
  const taken = (): void => {
    setOpen(null);
    store.send({ kind: "selected", selection: { kind: "line", lineId } });
    document.querySelector<HTMLElement>(".board-canvas")?.focus();
  };
  const dialog = { plan, plant, lineId, within, onTaken: taken, onClose: () => setOpen(null) };
  if (isProvisional) return <NotYetYours />;
  return (
    <section className="hold" aria-label={text.title}>
      <h3>{text.title}</h3>
      {own.length > 0 && (
        <ul className="hours-list">
          {own.map(({ key, name, spell, back, label }) => (
            <li key={key}>
              <OwnHours name={name} spell={spell} />
              <button
                type="button"
                className="button"
                disabled={!isReady}
                onClick={() => take(back, taken)}
                aria-description={name}
              >
                {text[label]}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="hold-buttons">
        <button type="button" className="button" disabled={!isReady} onClick={() => setOpen("closing")}>
          {text.close}
        </button>
        <button type="button" className="button" disabled={!isReady} onClick={() => setOpen("shift")}>
          {text.add}
        </button>
      </div>
      <p className="hint">{text.hint}</p>
      {isOpen === "closing" && <CloseLineDialog {...dialog} />}
      {isOpen === "shift" && <AddShiftDialog {...dialog} />}
    </section>
  );
}

function OwnHours({ name, spell }: { readonly name: string; readonly spell: BoardSpell }): JSX.Element {
  const { plant: text } = useText();
  const format = useFormat();
  return (
    <span>
      <strong>{name}</strong>
      <br />
      {text.calendar.fromTo(format.instant(spell.start), format.instant(spell.end))}
    </span>
  );
}

interface OwnSpell {
  readonly key: string;
  readonly name: string;
  readonly spell: BoardSpell;
  /** What ends it. */
  readonly back: HoursEdit;
  readonly label: "openAgain" | "takeBack";
}

/** What the line has of its own and the plan has still ahead, in order of time. */
function ownHours(plan: BoardPlan, plant: Plant, lineId: string): readonly OwnSpell[] {
  const clock = zoneClock(plan.document.plant.timeZone);
  const closures = plant.lineClosures
    .filter((closure) => closure.lineId === lineId)
    .map((closure): OwnSpell => ({
      key: `closure ${closure.from}`,
      name: closure.reason,
      spell: {
        start: instantOfWallText(clock, closure.from) ?? 0,
        end: instantOfWallText(clock, closure.to) ?? 0,
      },
      back: { kind: "open line", closure },
      label: "openAgain",
    }));
  const shifts = plant.addedShifts
    .filter((shift) => shift.lineIds.some((id) => id === lineId))
    .map((shift): OwnSpell => ({
      key: `shift ${shift.date} ${shift.start}`,
      name: shift.name,
      spell: shiftSpell(clock, shift.date, shift) ?? { start: 0, end: 0 },
      back: { kind: "take shift back", shift },
      label: "takeBack",
    }));
  return [...closures, ...shifts]
    .filter(({ spell }) => spell.end > plan.startAt)
    .sort((a, b) => a.spell.start - b.spell.start);
}
