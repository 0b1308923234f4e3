import { useEffect, useMemo, useRef, type JSX, type KeyboardEvent } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import { intentOfCarryKey, intentOfKey } from "../../interactions/keyboard.ts";
import { attachPointer } from "../../interactions/pointer.ts";
import { attachWheel } from "../../interactions/wheel.ts";
import { boardRows } from "../../kernels/board-rows.ts";
import type { HeldOrders, PromisedOrders } from "../../kernels/held-order.ts";
import { ordersKept } from "../../kernels/plan-filter.ts";
import { greatestScrollPx, timeWidthPx } from "../../kernels/row-layout.ts";
import { drawBoard } from "../../render/draw-board.ts";
import { readPalette, type Palette } from "../../render/palette.ts";
import { CanvasPen } from "../../render/canvas-pen.ts";
import { boardFont } from "../../render/pen.ts";
import { forgetTextWidths } from "../../render/text-widths.ts";
import { layoutOf, rowsOf } from "../../state/board-view.ts";
import { selectedOrderId } from "../../state/reduce.ts";
import type { BoardState } from "../../state/board-state.ts";
import { refusedLinesOf, shownPlan } from "../../state/carry.ts";
import type { CarriedLot } from "../../render/frame.ts";
import { useText } from "../../text/text.ts";
import { boardAxis } from "./board-axis.ts";
import { boardWords } from "../../format/board-words.ts";
import { densityChoice } from "../../sync/density.ts";
import { useKeptChoice } from "../../sync/use-kept-choice.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useBoard, useBoardStore } from "./use-board.ts";

interface BoardCanvasProps {
  readonly plant: Plant | undefined;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly names: PlanNames;
  /** Until when the published runs stay, seconds since the epoch; null: none does. */
  readonly frozenUntil: number | null;
  readonly describedBy: string;
}

/** The board itself: a canvas that draws when the state has changed, once a frame at most, apart from React. */
export function BoardCanvas({
  plant,
  held,
  promised,
  names,
  frozenUntil,
  describedBy,
}: BoardCanvasProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const store = useBoardStore();
  const plan = useBoard((state) => state.plan);
  const filter = useBoard((state) => state.filter);
  const density = useKeptChoice(densityChoice);
  const canvasRef = useRef<HTMLCanvasElement>(null);
  const frameRef = useRef<HTMLDivElement>(null);
  const axis = useMemo(() => (plan === null ? null : boardAxis(plan, plant)), [plan, plant]);
  const words = useMemo(
    () => (plan === null ? null : boardWords(plan, { names, held, promised, text, format })),
    [plan, names, held, promised, text, format],
  );
  const kept = useMemo(() => (plan === null ? null : ordersKept(plan, filter)), [plan, filter]);

  useEffect(() => store.send({ kind: "density chosen", density }), [density, store]);
  useEffect(() => {
    const canvas = canvasRef.current;
    const frame = frameRef.current;
    const context = canvas?.getContext("2d", { alpha: false });
    if (
      canvas === null ||
      frame === null ||
      context === null ||
      context === undefined ||
      axis === null ||
      words === null
    )
      return;
    let palette: Palette = readPalette(frame);
    let request = 0;

    const draw = (): void => {
      request = 0;
      const state = store.read();
      const rows = rowsOf(state);
      if (rows === null || state.size.widthPx === 0) return;
      const dotsPerPx = window.devicePixelRatio;
      fitCanvas(canvas, state.size.widthPx * dotsPerPx, state.size.heightPx * dotsPerPx);
      const layout = layoutOf(state);
      canvas.style.touchAction = greatestScrollPx(layout) > 0 ? "none" : "pan-y";
      canvas.style.cursor = isToBePicked(state) ? "pointer" : "";
      const shown = shownPlan(state) ?? rows.plan;
      // Positions and pointed-at places are those of the standing plan: they say nothing of one that is only foreseen.
      const isStanding = shown === rows.plan;
      const selection = isStanding ? state.selection : null;
      drawBoard(new CanvasPen(context, dotsPerPx), {
        plan: shown,
        rows: boardRows(shown, state.rowChoice),
        layout,
        view: state.view,
        palette,
        words,
        days: axis.days,
        shifts: axis.marksFor(86_400 / state.view.secondsPerPx),
        now: nowSeconds(),
        frozenUntil,
        kept,
        held,
        promised,
        hover: isStanding ? state.hover : null,
        carry: carriedLot(state),
        selectedIndex: selection?.kind === "segment" ? selection.index : null,
        selectedOrderId: isStanding ? selectedOrderId(state) : null,
        lineChoice: { lineId: state.selection?.kind === "line" ? state.selection.lineId : null },
        selectedGap: selection?.kind === "gap" ? selection : null,
        isFocused: document.activeElement === canvas,
      });
    };
    const schedule = (): void => {
      if (request === 0) request = requestAnimationFrame(draw);
    };

    const sizes = new ResizeObserver(() => {
      store.send({
        kind: "board resized",
        size: { widthPx: frame.clientWidth, heightPx: frame.clientHeight },
      });
      schedule();
    });
    sizes.observe(frame);
    const themes = new MutationObserver(() => {
      palette = readPalette(frame);
      schedule();
    });
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ["data-theme"] });
    const fonts = Promise.all(Object.values(boardFont).map((font) => document.fonts.load(font.css)));
    void fonts.then(() => {
      forgetTextWidths();
      schedule();
    });
    const minute = setInterval(schedule, 60_000);
    const detach = [store.subscribe(schedule), attachPointer(canvas, store), attachWheel(canvas, store)];
    canvas.addEventListener("focus", schedule);
    canvas.addEventListener("blur", schedule);
    schedule();
    return () => {
      cancelAnimationFrame(request);
      clearInterval(minute);
      sizes.disconnect();
      themes.disconnect();
      for (const undo of detach) undo();
      canvas.removeEventListener("focus", schedule);
      canvas.removeEventListener("blur", schedule);
    };
  }, [axis, frozenUntil, held, promised, kept, store, words]);

  const onBlur = (): void => {
    // The keyboard's hold ends where the keyboard goes elsewhere.
    if (store.read().carry?.point === null) store.send({ kind: "given up" });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const state = store.read();
    const intentOf = state.carry === null ? intentOfKey : intentOfCarryKey;
    const intent = intentOf(event, nowSeconds(), timeWidthPx(layoutOf(state)));
    if (intent === null) return;
    event.preventDefault();
    store.send({ kind: "pointed at", hit: null });
    store.send(intent);
  };

  return (
    <div className="board-frame" ref={frameRef}>
      <canvas
        ref={canvasRef}
        className="board-canvas"
        tabIndex={0}
        role="application"
        aria-roledescription={text.board.canvasRole}
        aria-label={text.board.canvasLabel}
        aria-describedby={describedBy}
        onKeyDown={onKeyDown}
        onBlur={onBlur}
      />
    </div>
  );
}

/** A click on what is pointed at tells more of it. */
function isToBePicked({ hover, rowChoice }: BoardState): boolean {
  if (hover?.kind === "row") return rowChoice === "lines";
  return hover?.kind === "segment" || hover?.kind === "gap";
}

function carriedLot(state: BoardState): CarriedLot | null {
  const { plan, carry } = state;
  return plan === null || carry === null
    ? null
    : { ...carry, standing: plan, refused: refusedLinesOf(state) };
}

function fitCanvas(canvas: HTMLCanvasElement, width: number, height: number): void {
  const [wanted, tall] = [Math.round(width), Math.round(height)];
  if (canvas.width !== wanted) canvas.width = wanted;
  if (canvas.height !== tall) canvas.height = tall;
}
