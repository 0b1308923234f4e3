import type { JSX } from "react";
import { Icon } from "./icon.tsx";

interface FindBoxProps {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

export function FindBox({ label, hint, value, onChange }: FindBoxProps): JSX.Element {
  return (
    <label className="find-box">
      <Icon name="find" />
      <span className="unseen">{label}</span>
      <input
        type="search"
        value={value}
        placeholder={hint}
        spellCheck={false}
        autoComplete="off"
        onChange={(event) => onChange(event.target.value)}
      />
    </label>
  );
}
