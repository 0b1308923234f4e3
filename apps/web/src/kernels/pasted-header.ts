/** Columns of pasted rows without a header, in the sequence in which the book shows and exports them. */
const allColumns = [
  "order",
  "customer",
  "product",
  "pieces",
  "due",
  "earliest start",
  "weight",
  "kind",
  "under tolerance",
  "over tolerance",
  "parts allowed",
] as const;

/**
 * The header that pasted rows lack; null where the first row is one, or no sequence of columns fits. A header has no
 * bare numbers; rows of orders have pieces. Four columns are order, product, pieces, due; from five on the customer
 * stands after the order.
 */
export function missingHeader(rows: readonly (readonly string[])[]): readonly string[] | null {
  const [first = []] = rows;
  const hasNumber = first.some((cell) => /^\d[\d.,'’\s]*$/u.test(cell.trim()));
  if (!hasNumber || first.length < 4 || first.length > allColumns.length) return null;
  return first.length === 4
    ? allColumns.slice(0, 5).filter((column) => column !== "customer")
    : allColumns.slice(0, first.length);
}
