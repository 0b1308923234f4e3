import {
  useCallback,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
  type FocusEvent,
  type JSX,
  type KeyboardEvent,
  type ReactNode,
} from "react";

/** Room between an open panel and the edge of the window. */
const edgePx = 8;

interface DisclosureProps {
  /** What the button shows. */
  readonly label: ReactNode;
  readonly buttonClass?: string;
  readonly panelClass?: string;
  /** Which side of the button the panel keeps to where there is room. */
  readonly side?: "left" | "right";
  readonly children: ReactNode;
}

/** A button that opens a panel below it. Escape closes it and gives the focus back; so does going elsewhere, which keeps the focus there. */
export function Disclosure({
  label,
  buttonClass = "button",
  panelClass = "popover",
  side = "left",
  children,
}: DisclosureProps): JSX.Element {
  const [isOpen, setOpen] = useState(false);
  const close = useCallback(() => setOpen(false), []);
  const whole = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const panelId = useId();
  useEffect(() => {
    if (!isOpen) return;
    const onPointerDown = ({ target }: PointerEvent): void => {
      if (target instanceof Node && whole.current?.contains(target) === false) close();
    };
    document.addEventListener("pointerdown", onPointerDown);
    return () => document.removeEventListener("pointerdown", onPointerDown);
  }, [isOpen, close]);
  const onKeyDown = (event: KeyboardEvent): void => {
    // A dialog that was opened from the panel closes by itself and gives the focus back to it.
    const isInDialog = event.target instanceof Element && event.target.closest("dialog") !== null;
    if (event.key !== "Escape" || !isOpen || isInDialog) return;
    event.stopPropagation();
    close();
    button.current?.focus();
  };
  const onBlur = ({ currentTarget, relatedTarget }: FocusEvent): void => {
    if (relatedTarget instanceof Node && !currentTarget.contains(relatedTarget)) close();
  };
  return (
    <div ref={whole} className="disclosure" onKeyDown={onKeyDown} onBlur={onBlur}>
      <button
        ref={button}
        type="button"
        className={buttonClass}
        aria-expanded={isOpen}
        aria-controls={isOpen ? panelId : undefined}
        onClick={() => setOpen(!isOpen)}
      >
        {label}
      </button>
      {isOpen && (
        <Panel id={panelId} className={`${panelClass} panel-${side}`}>
          {children}
        </Panel>
      )}
    </div>
  );
}

interface PanelProps {
  readonly id: string;
  readonly className: string;
  readonly children: ReactNode;
}

/** Moved sideways as far as it must to be in the window. */
function Panel({ id, className, children }: PanelProps): JSX.Element {
  const panel = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const keepInWindow = (): void => {
      const { current } = panel;
      if (current === null) return;
      current.style.translate = "";
      const { left, right } = current.getBoundingClientRect();
      const over = Math.max(0, right - (document.documentElement.clientWidth - edgePx));
      current.style.translate = `${Math.max(edgePx - left, -over)}px`;
    };
    // what stands around it may be laid out anew only after the event, so it is looked at again in the next frame
    let frame = 0;
    const onResize = (): void => {
      keepInWindow();
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => {
        frame = requestAnimationFrame(keepInWindow);
      });
    };
    keepInWindow();
    window.addEventListener("resize", onResize);
    return () => {
      cancelAnimationFrame(frame);
      window.removeEventListener("resize", onResize);
    };
  }, []);
  return (
    <div ref={panel} id={id} className={className}>
      {children}
    </div>
  );
}
