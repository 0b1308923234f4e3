/** Address of the page that shows two plans side by side. */
export function compareAddress(fromId: string, toId: string): string {
  return `/plans?${new URLSearchParams({ from: fromId, to: toId }).toString()}`;
}
