import { useMemo, type JSX } from "react";
import { Disclosure } from "../../components/disclosure.tsx";
import { FindBox } from "../../components/find-box.tsx";
import { FilterSelect } from "../../components/filter-select.tsx";
import { Icon } from "../../components/icon.tsx";
import { everything, filterChoices, ordersKept } from "../../kernels/plan-filter.ts";
import { useText } from "../../text/text.ts";
import { useBoard, useBoardStore } from "./use-board.ts";

const parts = ["customer", "productId", "mouldId", "sheetId"] as const;

/** What the planner wants to see, and how many orders that finds. */
export function BoardFilters(): JSX.Element {
  const { board: text } = useText();
  const store = useBoardStore();
  const plan = useBoard((state) => state.plan);
  const filter = useBoard((state) => state.filter);
  const choices = useMemo(() => (plan === null ? null : filterChoices(plan)), [plan]);
  const kept = useMemo(() => (plan === null ? null : ordersKept(plan, filter)), [plan, filter]);
  const active = parts.filter((part) => filter[part] !== null).length;
  return (
    <form
      className="board-filters"
      role="search"
      aria-label={text.filters}
      onSubmit={(event) => {
        event.preventDefault();
        const first = [...(kept ?? [])].find((orderId) => plan?.runsOfOrder.has(orderId) === true);
        if (first !== undefined) store.send({ kind: "order sought", orderId: first });
      }}
    >
      <button
        type="button"
        className="button"
        aria-pressed={filter.onlyLate}
        onClick={() => store.send({ kind: "filtered", by: { onlyLate: !filter.onlyLate } })}
      >
        <Icon name="flag" /> {text.onlyLate}
      </button>
      <Disclosure
        panelClass="popover filter-panel"
        label={
          <>
            <Icon name="filter" /> {active === 0 ? text.moreFilters : text.filtersOn(active)}
          </>
        }
      >
        {parts.map((part) => (
          <FilterSelect
            key={part}
            label={text.filterBy[part]}
            all={text.filterAll[part]}
            missing={text.notInPlan}
            value={filter[part]}
            choices={choices?.[part] ?? []}
            onChange={(value) => store.send({ kind: "filtered", by: { [part]: value } })}
          />
        ))}
      </Disclosure>
      <FindBox
        label={text.find}
        hint={text.findHint}
        value={filter.text}
        onChange={(value) => store.send({ kind: "filtered", by: { text: value } })}
      />
      <span className="found" role="status">
        {kept === null ? "" : text.found(kept.size)}
      </span>
      {kept !== null && (
        <button
          type="button"
          className="button"
          onClick={({ currentTarget }) => {
            // The button goes with the filter.
            currentTarget.form?.querySelector<HTMLElement>("input[type=search]")?.focus();
            store.send({ kind: "filtered", by: everything });
          }}
        >
          {text.showAll}
        </button>
      )}
    </form>
  );
}
