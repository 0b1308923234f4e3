import { useMemo, type JSX, type ReactNode } from "react";
import { Link, useSearchParams } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { OrderBookResponse } from "@formweek/contracts";
import { FileLinks } from "../../components/file-links.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { TakeAway } from "../../components/take-away.tsx";
import { useFormat } from "../../format/use-format.ts";
import { readOrderQuery, writeOrderQuery } from "../../kernels/order-query.ts";
import { byNumber, orderRows, type OrderQuery, type ProductNames } from "../../kernels/order-rows.ts";
import { exportAddress, orderTableAddress } from "../../sync/queries.ts";
import type { NamedProduct } from "../../kernels/new-order.ts";
import { namesIn } from "../../kernels/name-order.ts";
import { useLanguage, useText } from "../../text/text.ts";
import { AddOrder } from "./add-order.tsx";
import { BookRefusal } from "./book-refusal.tsx";
import { BookSteps } from "./book-steps.tsx";
import { BulkBar } from "./bulk-bar.tsx";
import { OrderFilters } from "./order-filters.tsx";
import { OrderTable } from "./order-table.tsx";
import { useBookWork } from "./use-book-edits.ts";
import { useOrderSelection } from "./use-order-selection.ts";

interface OrdersScreenProps {
  readonly plant: Plant;
  readonly book: OrderBookResponse;
  /** Buttons that bring orders in. */
  readonly importButtons: ReactNode;
}

/** The order book: what is ordered and what the newest plan says about it. Filter, search and sort live in the address. */
export function OrdersScreen({ plant, book, importButtons }: OrdersScreenProps): JSX.Element {
  const { done, undone } = useBookWork();
  const products = useMemo(() => productsOf(plant), [plant]);
  const { orders } = book;
  const choices = useMemo(() => plant.products.map(({ id, name }) => [id, name] as const), [plant]);
  const buttons = (
    <>
      {importButtons}
      <AddOrder orders={orders} products={choices} planFrom={plant.planFrom} />
    </>
  );
  return orders.length === 0 ? (
    <EmptyBook
      plantId={plant.id}
      importButtons={buttons}
      hasSteps={done.length + undone.length > 0}
      refusal={<BookRefusal orders={orders} productName={products.productName} />}
    />
  ) : (
    <FilledBook plant={plant} book={book} products={products} choices={choices} importButtons={buttons} />
  );
}

function productsOf(plant: Plant): ProductNames {
  const products = new Map<string, Plant["products"][number]>(plant.products.map((each) => [each.id, each]));
  return {
    productName: (productId) => products.get(productId)?.name ?? productId,
    sheetOf: (productId) => products.get(productId)?.sheetId ?? null,
  };
}

interface EmptyBookProps {
  readonly plantId: string;
  readonly importButtons: ReactNode;
  /** Something was done here that may be taken back. */
  readonly hasSteps: boolean;
  readonly refusal: ReactNode;
}

function EmptyBook({ plantId, importButtons, hasSteps, refusal }: EmptyBookProps): JSX.Element {
  const { orders: text } = useText();
  return (
    <div className="page">
      {hasSteps && <BookSteps />}
      {refusal}
      <EmptyNotice title={text.empty}>
        <p>{text.emptyHint}</p>
        <p>{text.emptyColumns}</p>
        <div className="tool-group">
          {importButtons}
          <a className="button" href={exportAddress(plantId, "orders.csv")} download>
            {text.sample}
          </a>
        </div>
      </EmptyNotice>
    </div>
  );
}

interface FilledBookProps extends OrdersScreenProps {
  readonly products: ProductNames;
  readonly choices: readonly NamedProduct[];
}

function FilledBook({ plant, book, products, choices, importButtons }: FilledBookProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { orders, planInputs } = book;
  const [address, setAddress] = useSearchParams();
  const query = useMemo(() => readOrderQuery(address), [address]);
  const { locale, language } = useLanguage();
  const names = useMemo(() => namesIn(locale), [locale]);
  const sorted = useMemo(() => byNumber(orders, names), [orders, names]);
  const rows = useMemo(
    () => orderRows(sorted, query, { ...products, names, stateName: (state) => text.states[state] }),
    [sorted, query, products, names, text],
  );
  const selection = useOrderSelection(rows);
  /** Choices are steps that Back takes away again; typing is not. */
  const ask = (changes: Partial<OrderQuery>): void => {
    const isTyping = Object.keys(changes).join() === "text";
    setAddress((before) => writeOrderQuery({ ...readOrderQuery(before), ...changes }, before), {
      replace: isTyping,
    });
  };
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
        <TakeAway>
          <FileLinks
            hint={text.orders.exportHint}
            files={[
              [text.orders.exportCsv, exportAddress(plant.id, "orders.csv")],
              [text.orders.exportXlsx, exportAddress(plant.id, "orders.xlsx")],
            ]}
          />
          <FileLinks
            hint={text.orders.withStatesHint}
            files={[
              [text.orders.withStatesCsv, orderTableAddress(plant.id, "csv", language)],
              [text.orders.withStatesXlsx, orderTableAddress(plant.id, "xlsx", language)],
            ]}
          />
        </TakeAway>
      </div>
      <OrderFilters orders={orders} products={products} plant={plant} query={query} onQuery={ask} />
      <div className="book-line">
        {planInputs === "changed" ? (
          <p className="other-inputs">
            {text.book.otherInputs} <Link href="/">{text.book.toBoard}</Link>
          </p>
        ) : (
          <p className="hint">{text.book.editHint}</p>
        )}
        <BookSteps />
      </div>
      <BookRefusal orders={orders} productName={products.productName} />
      {selection.selected.length > 0 && (
        <BulkBar selected={selection.selected} onUnselect={selection.clear} />
      )}
      {rows.length === 0 ? (
        <EmptyNotice isInner title={text.orders.noneFound} />
      ) : (
        <OrderTable
          rows={rows}
          productName={products.productName}
          products={choices}
          selection={selection}
          sort={query.sort}
          onSort={(column) =>
            ask({ sort: { column, isDescending: query.sort.column === column && !query.sort.isDescending } })
          }
        />
      )}
    </div>
  );
}
