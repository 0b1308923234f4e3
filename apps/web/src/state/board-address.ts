import { rowChoices } from "../kernels/board-rows.ts";
import { timeWidthPx } from "../kernels/row-layout.ts";
import type { BoardAddress, BoardState, TimeStretch } from "./board-state.ts";
import { layoutOf } from "./board-view.ts";
import { selectedOrderId } from "./reduce.ts";

/** Reads the parameters of an address. What it does not understand counts as not said. */
export function readBoardAddress(address: URLSearchParams): BoardAddress {
  const startAt = Math.floor(Date.parse(address.get("from") ?? "") / 1000);
  const spanSeconds = Number(address.get("span") ?? "");
  const hasTime = Number.isFinite(startAt) && Number.isInteger(spanSeconds) && spanSeconds > 0;
  const rows = address.get("rows")?.replaceAll("-", " ");
  return {
    filter: {
      onlyLate: address.get("late") === "1",
      customer: orNull(address.get("customer")),
      productId: orNull(address.get("product")),
      mouldId: orNull(address.get("mould")),
      sheetId: orNull(address.get("sheet")),
      text: address.get("find") ?? "",
    },
    rowChoice: rowChoices.find((choice) => choice === rows) ?? "lines",
    orderId: orNull(address.get("order")),
    time: hasTime ? { startAt, spanSeconds } : null,
  };
}

/** The address of what a board shows: `before` with the board's parameters set anew, and all others as they were. */
export function writeBoardAddress(state: BoardState, before: URLSearchParams): URLSearchParams {
  const next = new URLSearchParams(before);
  const { filter, rowChoice } = state;
  const set = (name: string, value: string | null): void => {
    if (value === null || value === "") next.delete(name);
    else next.set(name, value);
  };
  set("late", filter.onlyLate ? "1" : null);
  set("customer", filter.customer);
  set("product", filter.productId);
  set("mould", filter.mouldId);
  set("sheet", filter.sheetId);
  set("find", filter.text);
  set("rows", rowChoice === "lines" ? null : rowChoice.replaceAll(" ", "-"));
  set("order", selectedOrderId(state));
  // Before the board has its size, the address knows better which time is to be shown.
  const time = timeShown(state);
  if (time !== null) {
    set("from", new Date(time.startAt * 1000).toISOString().replace(".000Z", "Z"));
    set("span", `${time.spanSeconds}`);
  }
  return next;
}

/** The time that a board shows, in whole seconds; null as long as it has no plan or no size. */
function timeShown(state: BoardState): TimeStretch | null {
  if (state.plan === null || state.size.widthPx === 0) return null;
  const { startAt, secondsPerPx } = state.view;
  const spanSeconds = Math.round(secondsPerPx * timeWidthPx(layoutOf(state)));
  return { startAt: Math.round(startAt), spanSeconds };
}

function orNull(text: string | null): string | null {
  return text === "" ? null : text;
}
