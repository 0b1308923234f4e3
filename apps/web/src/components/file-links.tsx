import type { JSX } from "react";
import { Icon } from "./icon.tsx";

interface FileLinksProps {
  /** What the files hold. */
  readonly hint: string;
  readonly files: readonly (readonly [label: string, address: string])[];
}

/** Files to save that the server writes, one button each, under what they hold. */
export function FileLinks({ hint, files }: FileLinksProps): JSX.Element {
  return (
    <div className="menu-group" role="group" aria-label={hint}>
      <p className="hint" aria-hidden="true">
        {hint}
      </p>
      {files.map(([label, address]) => (
        <a key={address} className="button" href={address} download>
          <Icon name="export" /> {label}
        </a>
      ))}
    </div>
  );
}
