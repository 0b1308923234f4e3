import type { JSX } from "react";
import { rowChoices } from "../../kernels/board-rows.ts";
import { useText } from "../../text/text.ts";
import { useBoard, useBoardStore } from "./use-board.ts";

/** What the board and the table have one row of: the same plan from the resource that is short. */
export function RowChoiceSelect(): JSX.Element {
  const { board: text } = useText();
  const store = useBoardStore();
  const choice = useBoard((state) => state.rowChoice);
  const choose = (value: string): void => {
    const chosen = rowChoices.find((known) => known === value);
    if (chosen !== undefined) store.send({ kind: "rows chosen", choice: chosen });
  };
  return (
    <select
      className="select"
      aria-label={text.rows}
      title={text.rows}
      value={choice}
      onChange={(event) => choose(event.target.value)}
    >
      {rowChoices.map((known) => (
        <option key={known} value={known}>
          {text.rowChoices[known]}
        </option>
      ))}
    </select>
  );
}
