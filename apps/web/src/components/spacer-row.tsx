import type { JSX } from "react";

/** Stands for the rows above or below those in sight. */
export function SpacerRow({ height }: { readonly height: number }): JSX.Element | null {
  if (height <= 0) return null;
  return (
    <tr aria-hidden="true" className="spacer-row">
      <td style={{ height, padding: 0, border: 0 }} />
    </tr>
  );
}
