import type { ChangeoverRules } from "../plant/changeover-rules.ts";
import type { Polymer, PolymerName } from "../plant/polymer.ts";
import type { Sheet } from "../plant/sheet.ts";
import { SETTER, task } from "./planned-task.ts";
import type { ChangeRequest, PlannedTask } from "./planned-task.ts";

/**
 * Tasks of a sheet change. Rails and clearances are set by the team; splicing, flushing and soaking run beside it.
 * The flush of a polymer and of a colour use the same sheet path, one after the other, after the splice.
 * A line without sheet is threaded, its rails are set, and its oven counts as cold.
 */
export function sheetTasks(request: ChangeRequest): readonly PlannedTask[] {
  const { from, to, rules } = request;
  if (to.sheet === null || to.sheet.id === from.sheet?.id) return [];
  const before = from.sheet;
  const after = to.sheet;
  if (before === null) {
    return [
      task("splice", `Thread sheet ${after.name}`, rules.spliceMinutes),
      task("sheet width", `Set rails to ${after.widthMm} mm`, rules.sheetWidthMinutes, SETTER),
      task("oven re-soak", "Bring the oven to temperature", rules.ovenSoakMaxMinutes),
    ];
  }
  const tasks = [task("splice", `Splice in sheet ${after.name}`, rules.spliceMinutes)];
  if (before.widthMm !== after.widthMm) {
    tasks.push(task("sheet width", `Set rails to ${after.widthMm} mm`, rules.sheetWidthMinutes, SETTER));
  }
  if (before.thicknessMm !== after.thicknessMm) {
    tasks.push(
      task("sheet thickness", `Set for ${after.thicknessMm} mm sheet`, rules.sheetThicknessMinutes, SETTER),
    );
  }
  if (before.polymer !== after.polymer) {
    const words = `Change over from ${before.polymer} to ${after.polymer}`;
    tasks.push(task("polymer", words, rules.polymerMinutes, { after: ["splice"] }));
  }
  const colour =
    colourMinutes(before, after, rules) *
    (request.line.extruderFlowKgPerH === null ? 1 : rules.extruderColourFactor);
  if (colour > 0) {
    const words = `Run the colour clear, ${before.colour.name} to ${after.colour.name}`;
    tasks.push(task("colour", words, colour, { after: ["splice", "polymer"] }));
  }
  const soak = soakMinutes(before, after, request);
  if (soak > 0) tasks.push(task("oven re-soak", "Let the oven settle at the new temperature", soak));
  return tasks;
}

/**
 * Minutes to run one colour clear of the other. Darker to lighter takes longer, and so does a change between two colours
 * of the same rank, where neither hides the other. With `colourStepRanks` the minutes hold for so many ranks of darkness
 * and grow in proportion (at least one step); without it they hold for any difference. Same colour: 0.
 */
function colourMinutes(before: Sheet, after: Sheet, rules: ChangeoverRules): number {
  const sameName = before.colour.name === after.colour.name;
  const rise = after.colour.darkness - before.colour.darkness;
  if (rise === 0 && sameName) return 0;
  const minutes = rise > 0 ? rules.colourLighterToDarkerMinutes : rules.colourDarkerToLighterMinutes;
  const steps = rules.colourStepRanks === undefined ? 1 : Math.max(1, Math.abs(rise) / rules.colourStepRanks);
  return minutes * steps;
}

/** Minutes until the oven stands at the other forming temperature: in proportion to the difference, up to the rules' ceiling. */
function soakMinutes(before: Sheet, after: Sheet, { rules, polymers }: ChangeRequest): number {
  const one = formingTemperatureC(polymers, before.polymer);
  const other = formingTemperatureC(polymers, after.polymer);
  if (one === null || other === null) return before.polymer === after.polymer ? 0 : rules.ovenSoakMaxMinutes;
  return Math.min(rules.ovenSoakMaxMinutes, (Math.abs(one - other) / 10) * rules.ovenSoakMinutesPer10K);
}

function formingTemperatureC(polymers: readonly Polymer[], name: PolymerName): number | null {
  return polymers.find((polymer) => polymer.name === name)?.formingTemperatureC ?? null;
}
