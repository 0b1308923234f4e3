import type { JSX } from "react";
import { FieldFrame } from "../../components/field-frame.tsx";
import { ShiftFields } from "../../components/shift-fields.tsx";
import { useFormat } from "../../format/use-format.ts";
import { productMeant } from "../../kernels/product-finder.ts";
import { patternLineOf, type ChangeDraft } from "../../kernels/scenario-draft.ts";
import { useText } from "../../text/text.ts";
import { ChoiceField, FoundField, TextField } from "./change-fields.tsx";
import type { ChangeFormProps } from "./change-form-props.ts";
import { OrderChangeForm } from "./order-change-form.tsx";

/** The fields of a change, by its kind. */
export function ChangeForm({ ground, draft, remedies, onChange }: ChangeFormProps): JSX.Element {
  const { hours, whatIf } = useText();
  const { fields } = whatIf.editor;
  const { lines, setterTeams } = ground.plant;
  const remedy = (field: string): string | null => remedies.get(field) ?? null;
  switch (draft.kind) {
    case "close line":
      return (
        <div className="change-form">
          <ChoiceField
            label={hours.line}
            name="lineId"
            remedy={remedy("lineId")}
            choices={lines}
            value={draft.lineId}
            onChange={(lineId) => onChange({ ...draft, lineId })}
          />
          <Spell draft={draft} remedies={remedies} onChange={(spell) => onChange({ ...draft, ...spell })} />
          <TextField
            label={hours.reason}
            name="reason"
            remedy={remedy("reason")}
            placeholder={hours.reasonHint}
            value={draft.reason}
            onChange={(reason) => onChange({ ...draft, reason })}
          />
        </div>
      );
    case "add shift":
      return (
        <div className="change-form change-shift">
          <ShiftFields
            ground={ground}
            lineId={patternLineOf(ground.plant, draft.shift)}
            draft={draft.shift}
            remedies={remedies}
            onChange={(part) => onChange({ ...draft, shift: { ...draft.shift, ...part } })}
          />
        </div>
      );
    case "more copies":
      return (
        <div className="change-form">
          <MouldField ground={ground} draft={draft} remedies={remedies} onChange={onChange} />
          <TextField
            label={fields.more}
            name="more"
            remedy={remedy("more")}
            inputMode="numeric"
            value={draft.more}
            onChange={(more) => onChange({ ...draft, more })}
          />
        </div>
      );
    case "another team":
      return (
        <div className="change-form">
          <ChoiceField
            label={fields.likeTeamId}
            name="likeTeamId"
            remedy={remedy("likeTeamId")}
            choices={setterTeams}
            value={draft.likeTeamId}
            onChange={(likeTeamId) => onChange({ ...draft, likeTeamId })}
          />
          <TextField
            label={fields.teamName}
            name="name"
            remedy={remedy("name")}
            value={draft.name}
            onChange={(name) => onChange({ ...draft, name })}
          />
          <Spell draft={draft} remedies={remedies} onChange={(spell) => onChange({ ...draft, ...spell })} />
        </div>
      );
    case "cycle rate":
      return (
        <div className="change-form">
          <ChoiceField
            label={hours.line}
            name="lineId"
            remedy={remedy("lineId")}
            choices={lines}
            value={draft.lineId}
            onChange={(lineId) => onChange({ ...draft, lineId })}
          />
          <MouldField ground={ground} draft={draft} remedies={remedies} onChange={onChange} />
          <TextField
            label={fields.cyclesPerMin}
            name="cyclesPerMin"
            remedy={remedy("cyclesPerMin")}
            inputMode="decimal"
            value={draft.cyclesPerMin}
            onChange={(cyclesPerMin) => onChange({ ...draft, cyclesPerMin })}
          />
        </div>
      );
    case "cancel order":
    case "change order":
    case "rush order":
      return <OrderChangeForm ground={ground} draft={draft} remedies={remedies} onChange={onChange} />;
  }
}

interface SpellProps {
  readonly draft: { readonly from: string; readonly to: string };
  readonly remedies: ReadonlyMap<string, string>;
  readonly onChange: (spell: { readonly from: string; readonly to: string }) => void;
}

/** From when to when, by the plant's clock. */
function Spell({ draft: { from, to }, remedies, onChange }: SpellProps): JSX.Element {
  const { hours: text } = useText();
  return (
    <>
      {(["from", "to"] as const).map((end) => (
        <FieldFrame key={end} label={text[end]} name={end} remedy={remedies.get(end) ?? null}>
          {(control) => (
            <input
              {...control}
              className="field"
              type="datetime-local"
              value={end === "from" ? from : to}
              onChange={({ target }) => onChange({ from, to, [end]: target.value })}
            />
          )}
        </FieldFrame>
      ))}
    </>
  );
}

type MouldDraft = Extract<ChangeDraft, { readonly mouldId: string }>;

/** A mould found by name or id as it is typed, with what the plant knows of it. */
function MouldField({ ground, draft, remedies, onChange }: ChangeFormProps<MouldDraft>): JSX.Element {
  const {
    whatIf: { editor: text },
  } = useText();
  const format = useFormat();
  const mould = productMeant(ground.plant.moulds, draft.mouldId);
  const about =
    mould === null
      ? null
      : draft.kind === "more copies"
        ? text.copiesNow(format.count(mould.copies))
        : text.rateMost(format.figure(mould.maxCyclesPerMin));
  return (
    <FoundField
      label={text.fields.mouldId}
      name="mouldId"
      remedy={remedies.get("mouldId") ?? null}
      hint={mould === null ? null : `${text.meant(mould.name)} ${about}`}
      choices={ground.plant.moulds.map(({ id, name }) => [id, name])}
      value={draft.mouldId}
      onChange={(mouldId) => onChange({ ...draft, mouldId })}
    />
  );
}
