import type { JSX } from "react";
import { Icon } from "./icon.tsx";

interface StepButtonProps {
  readonly icon: "undo" | "redo";
  readonly label: string;
  /** What it would do, or why it does nothing. */
  readonly what: string;
  readonly isDisabled: boolean;
  readonly onPress: () => void;
}

/** Takes a step back or forth. */
export function StepButton({ icon, label, what, isDisabled, onPress }: StepButtonProps): JSX.Element {
  return (
    <button
      type="button"
      className="button button-icon"
      aria-label={label}
      aria-description={what}
      title={what}
      disabled={isDisabled}
      onClick={onPress}
    >
      <Icon name={icon} />
    </button>
  );
}
