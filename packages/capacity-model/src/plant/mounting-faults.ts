import { examined, faultIn } from "./plant-fault.ts";
import type { PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";

/** What the lines say hangs on them, and copies of moulds that do not exist. */
export function mountingFaults(plant: Plant): readonly PlantFault[] {
  const copiesOf = new Map(plant.moulds.map((mould) => [mould.id, mould.copies]));
  const holder = new Map<string, string>();
  const faults: PlantFault[] = [];
  plant.lines.forEach((line, index) => {
    const from = examined(["lines", index], "line", line.id);
    const { mouldId, copy } = line.mounted;
    if ((mouldId === null) !== (copy === null)) {
      faults.push(
        faultIn(from, {
          said: { kind: "mounted in part", mouldId },
          field: ["mounted", "copy"],
          value: copy,
          cause:
            mouldId === null
              ? "A copy is named, but no mould."
              : `Which copy of mould ${mouldId} hangs there is not said.`,
          remedy: "Give both the mould and its copy, or neither.",
        }),
      );
    }
    if (mouldId === null || copy === null) return;
    const copies = copiesOf.get(mouldId);
    if (copies !== undefined && copy > copies) {
      faults.push(
        faultIn(from, {
          said: { kind: "copy beyond copies", place: "mounted", copy, copies },
          field: ["mounted", "copy"],
          value: copy,
          cause: `Copy ${copy} of mould ${mouldId} is said to hang there, but only ${copies} exist.`,
          remedy: `Name a copy from 1 to ${copies}, or correct the mould's number of copies.`,
        }),
      );
    }
    const key = JSON.stringify([mouldId, copy]);
    const other = holder.get(key);
    if (other === undefined) holder.set(key, line.id);
    else {
      faults.push(
        faultIn(from, {
          said: { kind: "copy mounted twice", copy, mouldId, otherLineId: other },
          field: ["mounted", "copy"],
          value: copy,
          cause: `Copy ${copy} of mould ${mouldId} is said to hang on line ${other} too.`,
          remedy: "Look which line it hangs on and correct the other.",
        }),
      );
    }
  });
  return [...faults, ...outOfServiceFaults(plant), ...cycleCountFaults(plant)];
}

function cycleCountFaults(plant: Plant): readonly PlantFault[] {
  return plant.moulds.flatMap(({ id, copies, cyclesSinceService }, index) =>
    cyclesSinceService.length <= copies
      ? []
      : [
          faultIn(examined(["moulds", index], "mould", id), {
            said: { kind: "cycles beyond copies", given: cyclesSinceService.length, copies },
            field: ["cyclesSinceService"],
            value: cyclesSinceService.length,
            cause: `Cycles are given for ${cyclesSinceService.length} copies, but only ${copies} exist.`,
            remedy: `Give no more than ${copies}, one for each copy.`,
          }),
        ],
  );
}

function outOfServiceFaults(plant: Plant): readonly PlantFault[] {
  return plant.moulds.flatMap((mould, index) =>
    mould.outOfService.flatMap(({ copy }, place) =>
      copy === null || copy <= mould.copies
        ? []
        : [
            faultIn(examined(["moulds", index], "mould", mould.id), {
              said: { kind: "copy beyond copies", place: "out of service", copy, copies: mould.copies },
              field: ["outOfService", place, "copy"],
              value: copy,
              cause: `Copy ${copy} is said to be out of service, but only ${mould.copies} exist.`,
              remedy: `Name a copy from 1 to ${mould.copies}, or leave it empty for all.`,
            }),
          ],
    ),
  );
}
