import { useId, type JSX } from "react";
import { shiftSpell } from "../kernels/shift-offer.ts";
import {
  patternOf,
  patternsOf,
  shiftOfDraft,
  type ShiftDraft,
  type ShiftGround,
} from "../kernels/shift-draft.ts";
import { useText } from "../text/text.ts";
import { LongHours } from "./long-hours.tsx";
import { ShiftPeople } from "./shift-people.tsx";

interface ShiftFieldsProps {
  readonly ground: ShiftGround;
  /** The line whose weekly shifts are offered. */
  readonly lineId: string;
  readonly draft: ShiftDraft;
  /** What is wrong with what stands in a field, by its name in the shift. */
  readonly remedies?: ReadonlyMap<string, string>;
  readonly onChange: (part: Partial<ShiftDraft>) => void;
}

const none: ReadonlyMap<string, string> = new Map();

/** A shift on a day: its hours, the lines that work it, who comes, and what that asks of the people. */
export function ShiftFields({
  ground,
  lineId,
  draft,
  remedies = none,
  onChange,
}: ShiftFieldsProps): JSX.Element {
  const { plan, plant, clock } = ground;
  const { hours: text } = useText();
  const id = useId();
  const patterns = patternsOf(plant, lineId);
  const pattern = patternOf(patterns, draft);
  const spell = shiftSpell(clock, draft.date, draft);
  const told = (field: string) =>
    remedies.has(field) ? { "aria-invalid": true, "aria-describedby": `${id}-${field}-remedy` } : {};
  return (
    <>
      <div className="hours-fields">
        <label htmlFor={`${id}-pattern`}>{text.shift}</label>
        <select
          id={`${id}-pattern`}
          className="select"
          value={pattern === undefined ? -1 : patterns.indexOf(pattern)}
          onChange={(event) => onChange(patterns[Number(event.target.value)] ?? {})}
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
          {...told("date")}
          value={draft.date}
          onChange={(event) => onChange({ date: event.target.value })}
        />
        <label htmlFor={`${id}-start`}>{text.from}</label>
        <input
          id={`${id}-start`}
          className="select"
          type="time"
          required
          {...told("start")}
          value={draft.start}
          onChange={(event) => onChange({ start: event.target.value, name: "", breaks: [] })}
        />
        <label htmlFor={`${id}-end`}>{text.to}</label>
        <input
          id={`${id}-end`}
          className="select"
          type="time"
          required
          {...told("end")}
          value={draft.end}
          onChange={(event) => onChange({ end: event.target.value, name: "", breaks: [] })}
        />
      </div>
      <Remedies id={id} fields={["date", "start", "end", "name", "breaks", "shift"]} remedies={remedies} />
      <fieldset className="hours-choice">
        <legend>{text.lines}</legend>
        {plant.lines.map((line) => (
          <label key={line.id}>
            <input
              type="checkbox"
              checked={draft.lineIds.includes(line.id)}
              {...(draft.lineIds.includes(line.id) ? told("lineIds") : {})}
              onChange={(event) =>
                onChange({
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
      <Remedies id={id} fields={["lineIds"]} remedies={remedies} />
      {spell !== null && (
        <>
          <ShiftPeople plan={plan} plant={plant} draft={draft} spell={spell} onChange={onChange} />
          <Remedies id={id} fields={["teamIds", "operators", "poolId", "heads"]} remedies={remedies} />
          <LongHours
            plan={plan}
            clock={clock}
            spell={spell}
            shift={shiftOfDraft(ground, draft, text.shiftName)}
          />
        </>
      )}
    </>
  );
}

interface RemediesProps {
  readonly id: string;
  readonly fields: readonly string[];
  readonly remedies: ReadonlyMap<string, string>;
}

function Remedies({ id, fields, remedies }: RemediesProps): JSX.Element {
  return (
    <>
      {fields.map((field) => {
        const remedy = remedies.get(field);
        return remedy === undefined ? null : (
          <p key={field} id={`${id}-${field}-remedy`} className="late-words">
            {remedy}
          </p>
        );
      })}
    </>
  );
}
