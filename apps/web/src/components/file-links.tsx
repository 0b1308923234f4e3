import type { JSX } from "react";
import { Icon } from "./icon.tsx";

interface FileLinksProps {
  /** What the files hold, for the group's name and as a hint. */
  readonly hint: string;
  readonly files: readonly (readonly [label: string, address: string])[];
}

/** Files to save that the server writes, one button each. */
export function FileLinks({ hint, files }: FileLinksProps): JSX.Element {
  return (
    <div className="tool-group" role="group" aria-label={hint}>
      {files.map(([label, address]) => (
        <a key={address} className="button" href={address} title={hint} download>
          <Icon name="export" /> {label}
        </a>
      ))}
    </div>
  );
}
