import { useMemo, type JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { BookedOrder } from "@formweek/contracts";
import { Disclosure } from "../../components/disclosure.tsx";
import { FilterSelect } from "../../components/filter-select.tsx";
import { FindBox } from "../../components/find-box.tsx";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { everyOrder, orderStates } from "../../kernels/order-query.ts";
import { countStates, orderChoices, type OrderQuery, type ProductNames } from "../../kernels/order-rows.ts";
import { useNarrowScreen } from "../../sync/narrow-screen.ts";
import { useText } from "../../text/text.ts";

interface OrderFiltersProps {
  readonly orders: readonly BookedOrder[];
  readonly products: ProductNames;
  readonly plant: Plant | undefined;
  readonly query: OrderQuery;
  readonly onQuery: (changes: Partial<OrderQuery>) => void;
}

const parts = ["customer", "productId", "sheetId"] as const;

/** Which orders the planner wants to see. */
export function OrderFilters({ orders, products, plant, query, onQuery }: OrderFiltersProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const counts = useMemo(() => countStates(orders), [orders]);
  const choices = useMemo(() => {
    const sheets = new Map<string, string>(plant?.sheets.map((sheet) => [sheet.id, sheet.name]));
    return orderChoices(orders, products, (id) => sheets.get(id) ?? id);
  }, [orders, products, plant]);
  const isNarrow = useNarrowScreen();
  const active = [...parts, "kind" as const].filter((part) => query[part] !== null).length;
  const selects = (
    <>
      {parts.map((part) => (
        <FilterSelect
          key={part}
          label={text.book.filterBy[part]}
          all={text.book.filterAll[part]}
          missing={text.book.notInBook}
          value={query[part]}
          choices={choices[part]}
          onChange={(value) => onQuery({ [part]: value })}
        />
      ))}
      <FilterSelect
        label={text.book.filterBy.kind}
        all={text.book.filterAll.kind}
        missing={text.book.notInBook}
        value={query.kind}
        choices={Object.entries(text.book.kinds)}
        onChange={(value) => onQuery({ kind: value === "firm" || value === "forecast" ? value : null })}
      />
    </>
  );
  const isFiltered = Object.entries(everyOrder).some(
    ([part, open]) => query[part as keyof typeof everyOrder] !== open,
  );
  return (
    <div className="order-filters" role="search" aria-label={text.book.filters}>
      <FindBox
        label={text.orders.find}
        hint={text.orders.findHint}
        value={query.text}
        onChange={(find) => onQuery({ text: find })}
      />
      {isNarrow ? (
        <Disclosure
          panelClass="popover filter-panel"
          label={
            <>
              <Icon name="filter" /> {active === 0 ? text.board.moreFilters : text.board.filtersOn(active)}
            </>
          }
        >
          {selects}
        </Disclosure>
      ) : (
        selects
      )}
      <div className="chips" role="group" aria-label={text.orders.state}>
        <Chip
          label={text.orders.all}
          count={format.count(orders.length)}
          isOn={query.state === null}
          onPress={() => onQuery({ state: null })}
        />
        {orderStates
          .filter((state) => counts.has(state) || query.state === state)
          .map((state) => (
            <Chip
              key={state}
              label={text.states[state]}
              count={format.count(counts.get(state) ?? 0)}
              isOn={query.state === state}
              onPress={() => onQuery({ state: query.state === state ? null : state })}
            />
          ))}
      </div>
      {isFiltered && (
        <button type="button" className="button" onClick={() => onQuery(everyOrder)}>
          {text.orders.clearFilter}
        </button>
      )}
    </div>
  );
}

interface ChipProps {
  readonly label: string;
  readonly count: string;
  readonly isOn: boolean;
  readonly onPress: () => void;
}

function Chip({ label, count, isOn, onPress }: ChipProps): JSX.Element {
  return (
    <button type="button" className="chip" aria-pressed={isOn} onClick={onPress}>
      {label} <b>{count}</b>
    </button>
  );
}
