import { editText, plantNames, type Assembled, type Remedy } from "@formweek/application";
import { localTextAt } from "@formweek/capacity-model";

const inHours = (seconds: number): string => `${Math.round(seconds / 360) / 10} h`;

/** Remedies of one late order as rows, the best first: what to do, what becomes of the order, what it does to the plan. */
export function remedyText(
  assembled: Assembled,
  orderId: string,
  remedies: readonly Remedy[],
): readonly string[] {
  const { plant } = assembled;
  const names = plantNames(assembled);
  const clock = (at: number): string => localTextAt(plant.timeZone, at).replace("T", " ").slice(5, 16);
  if (remedies.length === 0) return [`${orderId}: nothing that was tried helps`];
  return [
    `${orderId}: what would help, each tried by planning anew`,
    ...remedies.map(({ edit, before, after, saves }) => {
      const sooner =
        before.finishAt === null || after.finishAt === null
          ? "planned"
          : `ready ${inHours(Math.abs(before.finishAt - after.finishAt))} ${after.finishAt <= before.finishAt ? "sooner" : "later"}`;
      return `  ${editText(edit, names, clock)}: ${sooner}, ${before.lateOrders} → ${after.lateOrders} late, the plan costs ${Math.abs(saves).toFixed(0)} ${plant.currency} ${saves >= 0 ? "less" : "more"}`;
    }),
    "  What a remedy itself costs is in it only where the plant has a price for it. Longer shifts: local working-time law decides.",
  ];
}
