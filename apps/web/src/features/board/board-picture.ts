import type { Plant } from "@formweek/capacity-model";
import type { Format } from "../../format/format.ts";
import type { PlanNames } from "../../format/plan-names.ts";
import type { HeldOrders, PromisedOrders } from "../../kernels/held-order.ts";
import { pictureLayout, type PictureExtent } from "../../kernels/picture-layout.ts";
import { ordersKept, type PlanFilter } from "../../kernels/plan-filter.ts";
import { timeWidthPx } from "../../kernels/row-layout.ts";
import type { Picture } from "../../render/draw-picture.ts";
import type { Palette } from "../../render/palette.ts";
import type { BoardState } from "../../state/board-state.ts";
import { boundsOf, layoutOf, rowsOf } from "../../state/board-view.ts";
import type { Text } from "../../text/text.ts";
import { boardAxis } from "./board-axis.ts";
import { boardWords } from "../../format/board-words.ts";

/** What a picture is made from, apart from the board's state. */
export interface PictureSource {
  readonly plant: Plant | undefined;
  readonly names: PlanNames;
  readonly held: HeldOrders;
  readonly promised: PromisedOrders;
  readonly text: Text;
  readonly format: Format;
  /** When the plan was made, and now; seconds since the epoch. */
  readonly madeAt: number;
  /** Until when the published runs stay; null: none does. */
  readonly frozenUntil: number | null;
  readonly now: number;
}

/** The board as it stands as a picture to take away, without what only its user sees; null without a plan. */
export function boardPicture(
  state: BoardState,
  source: PictureSource,
  choice: { readonly extent: PictureExtent; readonly palette: Palette },
): Picture | null {
  const rows = rowsOf(state);
  if (rows === null || state.size.widthPx === 0) return null;
  const { plan } = rows;
  const { plant, names, held, promised, text, format, madeAt, frozenUntil, now } = source;
  const { startAt, endAt } = boundsOf(state);
  const { layout, view } = pictureLayout(
    { layout: layoutOf(state), view: state.view, startAt, endAt },
    choice.extent,
  );
  const axis = boardAxis(plan, plant);
  const { summary } = plan.document;
  const shownUntil = view.startAt + timeWidthPx(layout) * view.secondsPerPx;
  const facts = [
    [
      text.picture.plan(format.dated(madeAt)),
      text.picture.orders(format.count(summary.late), format.count(summary.orders)),
    ].join(" · "),
    text.picture.span(
      format.dated(Math.round(view.startAt)),
      format.dated(Math.round(shownUntil)),
      plan.document.plant.timeZone,
    ),
    ...filterFacts(state.filter, text),
  ];
  return {
    words: { title: text.picture.heading(plan.document.plant.name), facts, legend: text.picture.legend },
    frame: {
      plan,
      rows,
      layout,
      view,
      palette: choice.palette,
      words: boardWords(plan, { names, held, promised, text, format }),
      days: axis.days,
      shifts: axis.marksFor(86_400 / view.secondsPerPx),
      now,
      frozenUntil,
      kept: ordersKept(plan, state.filter),
      held,
      promised,
      hover: null,
      carry: null,
      lineChoice: null,
      selectedIndex: null,
      selectedOrderId: null,
      selectedGap: null,
      isFocused: false,
    },
  };
}

function filterFacts(filter: PlanFilter, text: Text): readonly string[] {
  const { customer, productId, mouldId, sheetId } = filter;
  const sought = [filter.text.trim(), customer, productId, mouldId, sheetId];
  return [
    ...(filter.onlyLate ? [text.picture.onlyLate] : []),
    ...sought.flatMap((each) => (each === null || each === "" ? [] : [text.picture.found(each)])),
  ];
}

/** Name of a picture's file: plant, the day that its plan begins, and the kind of file. */
export function pictureFileName({ frame }: Picture, ending: "svg" | "png"): string {
  const { plant, horizon } = frame.plan.document;
  const id = plant.id.replace(/[^\p{L}\p{N}_-]+/gu, "-");
  return `${id}-board-${horizon.start.slice(0, 10)}.${ending}`;
}
