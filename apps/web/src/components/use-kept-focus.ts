import { useEffect, useRef, type FocusEvent, type RefObject } from "react";

/** Where the focus goes when what had it is replaced. */
interface KeptFocus {
  readonly ref: RefObject<HTMLDivElement | null>;
  readonly onFocus: () => void;
  readonly onBlur: (event: FocusEvent) => void;
}

/** Keeps the focus within a part of the page when its content becomes another (`shown` says which): its first button gets it. */
export function useKeptFocus(shown: string): KeptFocus {
  const ref = useRef<HTMLDivElement>(null);
  const hasFocus = useRef(false);
  useEffect(() => {
    if (hasFocus.current && document.activeElement === document.body)
      ref.current?.querySelector<HTMLElement>("button:not(:disabled)")?.focus();
  }, [shown]);
  return {
    ref,
    onFocus: () => (hasFocus.current = true),
    onBlur: ({ relatedTarget }) => {
      if (relatedTarget !== null) hasFocus.current = false;
    },
  };
}
