import type { Plant } from "@formweek/capacity-model";
import { useId, useState, type JSX } from "react";
import type { BoardPlan, BoardSpell } from "../../kernels/board-plan.ts";
import { shiftSpell } from "../../kernels/shift-offer.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";
import { HoursDialog } from "./hours-dialog.tsx";
import { LongHours } from "../../components/long-hours.tsx";
import { ShiftPeople } from "./shift-people.tsx";
import { firstDraft, patternOf, patternsOf, shiftOfDraft, type ShiftDraft } from "./shift-draft.ts";

interface AddShiftDialogProps {
  readonly plan: BoardPlan;
  readonly plant: Plant;
  readonly lineId: string;
  readonly within: BoardSpell | null;
  readonly onTaken: () => void;
  readonly onClose: () => void;
}

/** Which lines work a shift more, on which day, and who comes; with what that asks of the people. */
export function AddShiftDialog(props: AddShiftDialogProps): JSX.Element {
  const { plan, plant, lineId, within, onTaken, onClose } = props;
  const { hours: text } = useText();
  const id = useId();
  const clock = zoneClock(plan.document.plant.timeZone);
  const [draft, setDraft] = useState(() => firstDraft({ plan, plant, clock }, lineId, within));
  const change = (part: Partial<ShiftDraft>): void => setDraft((before) => ({ ...before, ...part }));
  const patterns = patternsOf(plant, lineId);
  const pattern = patternOf(patterns, draft);
  const spell = shiftSpell(clock, draft.date, draft);
  const shift = shiftOfDraft({ plan, plant, clock }, draft, text.shiftName);
  return (
    <HoursDialog
      title={text.addTitle}
      action={text.addNow}
      edit={shift === null ? null : { kind: "add shift", shift }}
      onTaken={onTaken}
      onClose={onClose}
    >
      <div className="hours-fields">
        <label htmlFor={`${id}-pattern`}>{text.shift}</label>
        <select
          id={`${id}-pattern`}
          className="select"
          value={pattern === undefined ? -1 : patterns.indexOf(pattern)}
          onChange={(event) => change(patterns[Number(event.target.value)] ?? {})}
        >
          {patterns.map(({ name, start, end }, index) => (
            <option key={index} value={index}>
              {text.pattern(name, start, end)}
            </option>
          ))}
          <option value={-1} disabled>
            {text.otherHours}
          </option>
        </select>
        <label htmlFor={`${id}-date`}>{text.day}</label>
        <input
          id={`${id}-date`}
          className="select"
          type="date"
          required
          value={draft.date}
          onChange={(event) => change({ date: event.target.value })}
        />
        <label htmlFor={`${id}-start`}>{text.from}</label>
        <input
          id={`${id}-start`}
          className="select"
          type="time"
          required
          value={draft.start}
          onChange={(event) => change({ start: event.target.value, name: "", breaks: [] })}
        />
        <label htmlFor={`${id}-end`}>{text.to}</label>
        <input
          id={`${id}-end`}
          className="select"
          type="time"
          required
          value={draft.end}
          onChange={(event) => change({ end: event.target.value, name: "", breaks: [] })}
        />
      </div>
      <fieldset className="hours-choice">
        <legend>{text.lines}</legend>
        {plant.lines.map((line) => (
          <label key={line.id}>
            <input
              type="checkbox"
              checked={draft.lineIds.includes(line.id)}
              onChange={(event) =>
                change({
                  lineIds: event.target.checked
                    ? [...draft.lineIds, line.id]
                    : draft.lineIds.filter((each) => each !== line.id),
                })
              }
            />{" "}
            {line.name}
          </label>
        ))}
      </fieldset>
      {spell !== null && (
        <>
          <ShiftPeople plan={plan} plant={plant} draft={draft} spell={spell} onChange={change} />
          <LongHours plan={plan} clock={clock} spell={spell} shift={shift} />
        </>
      )}
    </HoursDialog>
  );
}
