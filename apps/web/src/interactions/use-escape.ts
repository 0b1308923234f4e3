import { useEffect } from "react";

/**
 * Escape pressed anywhere while something is open, wherever the focus is; a field keeps it to itself,
 * and what stands over the page (a dialog, a panel of its own) has taken it before.
 */
export function useEscape(isOpen: boolean, onEscape: () => void): void {
  useEffect(() => {
    if (!isOpen) return;
    const onKeyDown = ({ key, target }: KeyboardEvent): void => {
      const isKept = target instanceof Element && target.closest("input, dialog") !== null;
      if (key === "Escape" && !isKept) onEscape();
    };
    document.addEventListener("keydown", onKeyDown);
    return () => document.removeEventListener("keydown", onKeyDown);
  }, [isOpen, onEscape]);
}
