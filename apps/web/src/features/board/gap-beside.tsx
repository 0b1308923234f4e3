import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan, BoardSegment } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { useBoardStore } from "./use-board.ts";

interface GapBesideProps {
  readonly plan: BoardPlan;
  readonly segment: BoardSegment;
}

/** Ways from a run or change to the free time before and after it on its line, for who does not point at it. */
export function GapBeside({ plan, segment }: GapBesideProps): JSX.Element | null {
  const { gap: text } = useText();
  const format = useFormat();
  const store = useBoardStore();
  const line = plan.lines[segment.lineIndex];
  const before = line?.segments[segment.place - 1];
  const after = line?.segments[segment.place + 1];
  const gaps = [
    { words: text.before, start: before?.end ?? plan.startAt, end: segment.start },
    { words: text.after, start: segment.end, end: after?.start ?? Math.max(plan.knownEndAt, segment.end) },
  ].filter(({ start, end }) => start < end);
  if (gaps.length === 0) return null;
  return (
    <p className="gap-beside">
      {gaps.map(({ words, start, end }) => (
        <button
          key={start}
          type="button"
          className="text-button"
          onClick={() => {
            store.send({ kind: "rows chosen", choice: "lines" });
            store.send({
              kind: "selected",
              selection: { kind: "gap", rowIndex: segment.lineIndex, start, end },
            });
          }}
        >
          {words(format.span(end - start))}
        </button>
      ))}
    </p>
  );
}
