import { useId, useLayoutEffect, useRef, type JSX, type ReactNode } from "react";

interface ModalProps {
  readonly title: string;
  /** Also by Escape. */
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A dialog over the page: holds the focus while it is open and gives it back, and Escape closes it. */
export function Modal({ title, onClose, children }: ModalProps): JSX.Element {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  // Closed before it leaves the page: a dialog that is merely taken away does not give the focus back.
  useLayoutEffect(() => {
    const opened = dialog.current;
    opened?.showModal();
    return () => opened?.close();
  }, []);
  const closed = (): void => {
    if (dialog.current?.open !== true) onClose();
  };
  return (
    <dialog ref={dialog} className="dialog" aria-labelledby={titleId} onClose={closed}>
      <h2 id={titleId}>{title}</h2>
      {children}
    </dialog>
  );
}
