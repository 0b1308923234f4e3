import type { JSX } from "react";

interface SheetBandProps {
  readonly colour: { readonly name: string; readonly hex: string; readonly clear: boolean };
}

/** The sheet's own colour as on the board: clear is hatched, every band is outlined, the name says it too. */
export function SheetBand({ colour }: SheetBandProps): JSX.Element {
  return (
    <span className="sheet-band">
      <span
        className={colour.clear ? "band band-clear" : "band"}
        style={colour.clear ? undefined : { backgroundColor: colour.hex }}
        aria-hidden="true"
      />
      {colour.name}
    </span>
  );
}
