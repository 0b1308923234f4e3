import type { Plant } from "@formweek/capacity-model";
import { useState, type JSX } from "react";
import { ShiftFields } from "../../components/shift-fields.tsx";
import type { BoardPlan, BoardSpell } from "../../kernels/board-plan.ts";
import { firstDraft, shiftOfDraft, type ShiftDraft } from "../../kernels/shift-draft.ts";
import { zoneClock } from "../../kernels/zone-clock.ts";
import { useText } from "../../text/text.ts";
import { HoursDialog } from "./hours-dialog.tsx";

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
  const ground = { plan, plant, clock: zoneClock(plan.document.plant.timeZone) };
  const [draft, setDraft] = useState(() => firstDraft(ground, lineId, within));
  const change = (part: Partial<ShiftDraft>): void => setDraft((before) => ({ ...before, ...part }));
  const shift = shiftOfDraft(ground, draft, text.shiftName);
  return (
    <HoursDialog
      title={text.addTitle}
      action={text.addNow}
      edit={shift === null ? null : { kind: "add shift", shift }}
      onTaken={onTaken}
      onClose={onClose}
    >
      <ShiftFields ground={ground} lineId={lineId} draft={draft} onChange={change} />
    </HoursDialog>
  );
}
