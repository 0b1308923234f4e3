import { useMemo, type JSX, type ReactNode } from "react";
import { useSearchParams } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { BookedOrder } from "@formweek/contracts";
import { FindBox } from "../../components/find-box.tsx";
import { FileLinks } from "../../components/file-links.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { countStates, orderRows, type OrderColumn, type OrderQuery } from "../../kernels/order-rows.ts";
import { exportAddress, orderTableAddress } from "../../sync/queries.ts";
import { useText } from "../../text/text.ts";
import { OrderTable } from "./order-table.tsx";

const states: readonly BookedOrder["state"][] = [
  "late",
  "unplanned",
  "partly planned",
  "not planned yet",
  "on time",
  "covered by stock",
];
const columns: readonly OrderColumn[] = [
  "id",
  "customer",
  "productId",
  "pieces",
  "dueAt",
  "state",
  "finish",
  "slackSeconds",
];

interface OrdersScreenProps {
  readonly plantId: string;
  readonly plant: Plant | undefined;
  readonly orders: readonly BookedOrder[];
  /** Buttons that bring orders in. */
  readonly importButtons: ReactNode;
}

/** The order book: what is ordered and what the newest plan says about it. Filter, search and sort live in the address. */
export function OrdersScreen({ plantId, plant, orders, importButtons }: OrdersScreenProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const [address, setAddress] = useSearchParams();
  const productName = useMemo(() => {
    const names = new Map<string, string>(plant?.products.map((product) => [product.id, product.name]));
    return (productId: string): string => names.get(productId) ?? productId;
  }, [plant]);
  const query = useMemo(() => queryOf(address), [address]);
  const rows = useMemo(() => orderRows(orders, query, productName), [orders, query, productName]);
  const counts = useMemo(() => countStates(orders), [orders]);

  /** Choices are steps that Back takes away again; typing is not. */
  const change = (changes: Readonly<Record<string, string>>, replace = false): void =>
    setAddress(
      (before) => {
        const next = new URLSearchParams(before);
        for (const [name, value] of Object.entries(changes)) {
          if (value === "") next.delete(name);
          else next.set(name, value);
        }
        return next;
      },
      { replace },
    );

  if (orders.length === 0) {
    return (
      <div className="page">
        <EmptyNotice title={text.orders.empty}>
          <p>{text.orders.emptyHint}</p>
          <p>{text.orders.emptyColumns}</p>
          <div className="tool-group">
            {importButtons}
            <a className="button" href={exportAddress(plantId, "orders.csv")} download>
              {text.orders.sample}
            </a>
          </div>
        </EmptyNotice>
      </div>
    );
  }
  return (
    <div className="page page-fill">
      <div className="page-head">
        <h1>{text.orders.title}</h1>
        <span className="hint" role="status">
          {rows.length === orders.length
            ? text.orders.count(format.count(orders.length))
            : text.orders.shown(format.count(rows.length), format.count(orders.length))}
        </span>
        <span className="spring" />
        {importButtons}
        <FileLinks
          hint={text.orders.exportHint}
          files={[
            [text.orders.exportCsv, exportAddress(plantId, "orders.csv")],
            [text.orders.exportXlsx, exportAddress(plantId, "orders.xlsx")],
          ]}
        />
        <FileLinks
          hint={text.orders.withStatesHint}
          files={[
            [text.orders.withStatesCsv, orderTableAddress(plantId, "csv")],
            [text.orders.withStatesXlsx, orderTableAddress(plantId, "xlsx")],
          ]}
        />
      </div>
      <div className="page-head">
        <FindBox
          label={text.orders.find}
          hint={text.orders.findHint}
          value={query.text}
          onChange={(find) => change({ find }, true)}
        />
        <div className="chips" role="group" aria-label={text.orders.state}>
          <Chip
            label={text.orders.all}
            count={format.count(orders.length)}
            isOn={query.state === null}
            onPress={() => change({ state: "" })}
          />
          {states
            .filter((state) => counts.has(state) || query.state === state)
            .map((state) => (
              <Chip
                key={state}
                label={text.states[state]}
                count={format.count(counts.get(state) ?? 0)}
                isOn={query.state === state}
                onPress={() => change({ state: query.state === state ? "" : state })}
              />
            ))}
        </div>
      </div>
      {rows.length === 0 ? (
        <EmptyNotice isInner title={text.orders.noneFound}>
          <button type="button" className="button" onClick={() => change({ find: "", state: "" })}>
            {text.orders.clearFilter}
          </button>
        </EmptyNotice>
      ) : (
        <OrderTable
          rows={rows}
          productName={productName}
          sort={query.sort}
          onSort={(column) => {
            const isDescending = query.sort.column === column && !query.sort.isDescending;
            change({ sort: column, down: isDescending ? "1" : "" });
          }}
        />
      )}
    </div>
  );
}

function queryOf(address: URLSearchParams): OrderQuery {
  return {
    text: address.get("find") ?? "",
    state: states.find((state) => state === address.get("state")) ?? null,
    sort: {
      column: columns.find((column) => column === address.get("sort")) ?? "dueAt",
      isDescending: address.get("down") === "1",
    },
  };
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
