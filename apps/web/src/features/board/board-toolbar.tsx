import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { timeWidthPx } from "../../kernels/row-layout.ts";
import { layoutOf } from "../../state/board-view.ts";
import { useText } from "../../text/text.ts";
import { nowSeconds } from "../../sync/now.ts";
import { RowChoiceSelect } from "./row-choice.tsx";
import { UndoButtons } from "./undo-buttons.tsx";
import { useBoard, useBoardStore } from "./use-board.ts";

const hour = 3600;
const day = 24 * hour;
const spans = {
  shift: 8 * hour,
  day,
  threeDays: 3 * day,
  week: 7 * day,
  twoWeeks: 14 * day,
  fourWeeks: 28 * day,
  eightWeeks: 56 * day,
} as const;
type SpanName = keyof typeof spans;
const spanNames = Object.keys(spans) as SpanName[];

export type BoardShape = "board" | "table";

interface BoardToolbarProps {
  readonly shape: BoardShape;
  readonly onShape: (shape: BoardShape) => void;
}

export function BoardToolbar({ shape, onShape }: BoardToolbarProps): JSX.Element {
  const { board: text } = useText();
  const store = useBoardStore();
  return (
    <div className="board-view" role="toolbar" aria-label={text.title}>
      <div className="tool-group" role="group" aria-label={text.view}>
        <button
          type="button"
          className="button"
          aria-pressed={shape === "board"}
          onClick={() => onShape("board")}
        >
          {text.asBoard}
        </button>
        <button
          type="button"
          className="button"
          aria-pressed={shape === "table"}
          onClick={() => onShape("table")}
        >
          {text.asTable}
        </button>
      </div>
      <RowChoiceSelect />
      <UndoButtons />
      {shape === "board" && (
        <>
          <div className="tool-group">
            <ToolButton
              label={text.zoomOut}
              icon="minus"
              onPress={() => store.send({ kind: "zoomed", atX: null, factor: 1 / 1.5 })}
            />
            <SpanChoice />
            <ToolButton
              label={text.zoomIn}
              icon="plus"
              onPress={() => store.send({ kind: "zoomed", atX: null, factor: 1.5 })}
            />
          </div>
          <div className="tool-group">
            <ToolButton
              label={text.earlier}
              icon="left"
              onPress={() => store.send({ kind: "panned", byX: -pagePx(store.read), byY: 0 })}
            />
            <WhereButton />
            <ToolButton
              label={text.later}
              icon="right"
              onPress={() => store.send({ kind: "panned", byX: pagePx(store.read), byY: 0 })}
            />
          </div>
        </>
      )}
    </div>
  );
}

function pagePx(read: ReturnType<typeof useBoardStore>["read"]): number {
  return timeWidthPx(layoutOf(read())) * 0.5;
}

interface ToolButtonProps {
  readonly label: string;
  readonly icon: "minus" | "plus" | "left" | "right";
  readonly onPress: () => void;
}

function ToolButton({ label, icon, onPress }: ToolButtonProps): JSX.Element {
  return (
    <button type="button" className="button button-icon" aria-label={label} title={label} onClick={onPress}>
      <Icon name={icon} />
    </button>
  );
}

/** Shows the span nearest to the one in view; choosing one takes it. */
function SpanChoice(): JSX.Element {
  const { board: text } = useText();
  const store = useBoardStore();
  const span = useBoard((state) => spanNearest(state.view.secondsPerPx * timeWidthPx(layoutOf(state))));
  const choose = (value: string): void => {
    const name = spanNames.find((known) => known === value);
    store.send({ kind: "span chosen", spanSeconds: name === undefined ? "whole plan" : spans[name] });
  };
  return (
    <select
      className="select"
      aria-label={text.span}
      value={span}
      onChange={(event) => choose(event.target.value)}
    >
      {spanNames.map((name) => (
        <option key={name} value={name}>
          {text.spans[name]}
        </option>
      ))}
      <option value="plan">{text.spans.plan}</option>
    </select>
  );
}

function spanNearest(seconds: number): SpanName {
  const off = (name: SpanName): number => Math.abs(Math.log(spans[name] / Math.max(1, seconds)));
  return spanNames.reduce((best, name) => (off(name) < off(best) ? name : best), "week");
}

/** Goes to now when the plan holds it, else to the plan's start. */
function WhereButton(): JSX.Element {
  const { board: text } = useText();
  const store = useBoardStore();
  const plan = useBoard((state) => state.plan);
  const now = nowSeconds();
  const isNowInPlan = plan !== null && plan.startAt <= now && now < plan.endAt;
  return (
    <button
      type="button"
      className="button"
      onClick={() => store.send({ kind: "went to instant", at: isNowInPlan ? now : (plan?.startAt ?? now) })}
    >
      {isNowInPlan ? text.toNow : text.toStart}
    </button>
  );
}
