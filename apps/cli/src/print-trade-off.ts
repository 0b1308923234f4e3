import type { TradeOff } from "@formweek/application";

/** The plans of a trade-off run as a table: a row for each plan, money by criterion, and what the plan is best in. */
export function tradeOffText(
  { criteria, plans }: Pick<TradeOff, "criteria" | "plans">,
  currency: string,
): readonly string[] {
  const header = ["plan", ...criteria, "total", "not planned", "best in"];
  const rows = plans.map(({ plan, values, leastIn }, index) => [
    String(index + 1),
    ...values.map((value) => value.toFixed(0)),
    plan.objective.total.toFixed(0),
    String(plan.unplanned.length),
    leastIn.join(", "),
  ]);
  const widths = header.map((head, column) =>
    Math.max(head.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const rowText = (cells: readonly string[]): string =>
    cells
      .map((cell, column) => (column === cells.length - 1 ? cell : cell.padStart(widths[column] ?? 0)))
      .join("  ");
  return [
    plans.length === 1
      ? `One plan was found that no other beats; in ${currency}:`
      : `${plans.length} plans of which none beats another, the cheapest first; in ${currency}:`,
    rowText(header),
    ...rows.map(rowText),
  ];
}
