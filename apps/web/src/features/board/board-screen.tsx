import { useEffect, useId, useMemo, useRef, useState, type JSX, type ReactNode } from "react";
import { Link, useSearchParams } from "wouter";
import type { Plant } from "@formweek/capacity-model";
import type { HoldListResponse, PinListResponse, PlanResponse, RatesResponse } from "@formweek/contracts";
import { FileLinks } from "../../components/file-links.tsx";
import { EmptyNotice } from "../../components/notice.tsx";
import { TakeAway } from "../../components/take-away.tsx";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { boardPlan, secondsOf } from "../../kernels/board-plan.ts";
import { heldOrders, promisedOrders } from "../../kernels/held-order.ts";
import { rowsOf } from "../../state/board-view.ts";
import { refusedLines } from "../../kernels/refused-lines.ts";
import { boardStore } from "../../state/store.ts";
import { planTableAddress } from "../../sync/queries.ts";
import { keptView, runEffect } from "../../sync/run-effects.ts";
import { useLanguage, useText } from "../../text/text.ts";
import { BoardCanvas } from "./board-canvas.tsx";
import { BoardFilters } from "./board-filters.tsx";
import { BoardToolbar, type BoardShape } from "./board-toolbar.tsx";
import { DetailsPanel, PlanTable } from "./later-parts.tsx";
import { HoverNote } from "./hover-note.tsx";
import { planNames } from "../../format/plan-names.ts";
import { PictureButton } from "./picture-button.tsx";
import { CarryStrip } from "./carry-strip.tsx";
import { EditFailure } from "./edit-failure.tsx";
import { FrozenQuestion } from "./frozen-question.tsx";
import { LeftOut } from "./left-out.tsx";
import { NotTaken } from "./not-taken.tsx";
import { OthersSteps } from "./others-steps.tsx";
import { NewestStep } from "./undo-buttons.tsx";
import { SpokenSelection } from "./spoken-selection.tsx";
import { SummaryStrip } from "./summary-strip.tsx";
import { useBoardAddress } from "./use-board-address.ts";
import { BoardProvider, useBoard, useBoardStore } from "./use-board.ts";
import { EditsProvider, useOpenEdits } from "./use-plan-edits.ts";
import { useTrial } from "./use-trial.ts";

/** Which plan is on the board: the standing one, or the best so far of a run that goes on. */
interface BoardLook {
  readonly isProvisional: boolean;
  /** The other of them can be shown. */
  readonly canLook: boolean;
  readonly toggle: () => void;
}

interface BoardScreenProps {
  /** The standing plan, or the one that is looked at. */
  readonly plan: PlanResponse | null;
  readonly look: BoardLook;
  readonly plant: Plant | undefined;
  readonly orders: number;
  /** Which orders are held; undefined until the server has told. */
  readonly pins: PinListResponse | undefined;
  /** What is held for customers; undefined until the server has told. */
  readonly holds: HoldListResponse | undefined;
  /** Which products run where; undefined until the server has told. */
  readonly rates: RatesResponse | undefined;
  /** Orders of the book that the newest plan does not know. */
  readonly newOrders: number;
  /** Orders, plant or held orders are others than this plan was made from. */
  readonly hasOtherInputs: boolean;
  /** Until when the published runs stay, seconds since the epoch; null: none does. */
  readonly frozenUntil: number | null;
  /** Where planning is started and watched. */
  readonly solve: ReactNode;
  /** What is published, and the way to publish. */
  readonly versions: ReactNode;
}

/** The line board with its figures, tools and details; keeps its own state while it is open. */
export function BoardScreen({
  plan,
  look,
  plant,
  pins,
  holds,
  rates,
  orders,
  newOrders,
  hasOtherInputs,
  frozenUntil,
  solve,
  versions,
}: BoardScreenProps): JSX.Element {
  const [store] = useState(() => boardStore(runEffect));
  return (
    <BoardProvider value={store}>
      {plan === null ? (
        <NoPlan orders={orders} solve={solve} />
      ) : (
        <OpenBoard
          plan={plan}
          look={look}
          plant={plant}
          pins={pins}
          holds={holds}
          rates={rates}
          newOrders={newOrders}
          hasOtherInputs={hasOtherInputs}
          frozenUntil={frozenUntil}
          solve={solve}
          versions={versions}
        />
      )}
    </BoardProvider>
  );
}

function NoPlan({ orders, solve }: { readonly orders: number; readonly solve: ReactNode }): JSX.Element {
  const text = useText();
  const format = useFormat();
  return (
    <EmptyNotice title={text.board.noPlan}>
      <p>{orders > 0 ? text.board.noPlanWithOrders(format.count(orders)) : text.board.noPlanHint}</p>
      {orders > 0 ? (
        solve
      ) : (
        <Link href="/orders" className="button button-main">
          {text.board.toOrders}
        </Link>
      )}
    </EmptyNotice>
  );
}

interface OpenBoardProps {
  readonly plan: PlanResponse;
  readonly look: BoardLook;
  readonly newOrders: number;
  /** Orders, plant or held orders are others than this plan was made from. */
  readonly hasOtherInputs: boolean;
  readonly plant: Plant | undefined;
  readonly pins: PinListResponse | undefined;
  readonly holds: HoldListResponse | undefined;
  readonly rates: RatesResponse | undefined;
  readonly frozenUntil: number | null;
  readonly solve: ReactNode;
  readonly versions: ReactNode;
}

function OpenBoard({
  plan,
  look,
  plant,
  pins,
  holds,
  rates,
  newOrders,
  hasOtherInputs,
  frozenUntil,
  solve,
  versions,
}: OpenBoardProps): JSX.Element {
  const { text, language } = useLanguage();
  const format = useFormat();
  const store = useBoardStore();
  const [address, setAddress] = useSearchParams();
  const shape: BoardShape = address.get("show") === "table" ? "table" : "board";
  const showAs = (wanted: BoardShape): void =>
    setAddress((before) => {
      const next = new URLSearchParams(before);
      if (wanted === "table") next.set("show", wanted);
      else next.delete("show");
      return next;
    });
  const keysId = useId();
  const frozenId = useId();
  const board = useMemo(() => boardPlan(plan.planId, plan.document), [plan]);
  const held = useMemo(() => heldOrders(pins), [pins]);
  const promised = useMemo(() => promisedOrders(holds), [holds]);
  const names = useMemo(() => planNames(plant, text), [plant, text]);
  const rows = useBoard(rowsOf);
  const isOpened = useRef(false);
  const { isProvisional, canLook, toggle } = look;

  useEffect(() => {
    const view = isOpened.current ? null : keptView(board.document.plant.id);
    isOpened.current = true;
    if (view !== null) store.send({ kind: "view restored", view });
    store.send({ kind: "plan arrived", plan: board, isProvisional });
  }, [board, isProvisional, store]);
  useBoardAddress();
  const edits = useOpenEdits(plan.document.plant.id, store, isProvisional);
  const canTry = useTrial(board, store, { mouldName: names.mouldAlone, isWanted: !isProvisional });
  useEffect(
    () =>
      store.onEffect((effect) => {
        if (effect.kind === "show other plan" && canLook) toggle();
      }),
    [canLook, toggle, store],
  );
  useEffect(() => {
    if (rates !== undefined) store.send({ kind: "fit arrived", refused: refusedLines(rates) });
  }, [rates, store]);

  return (
    <EditsProvider value={edits}>
      <div className="page page-board">
        <h1 className="unseen">{text.board.title}</h1>
        <div className="board-head">
          <SummaryStrip
            document={plan.document}
            newOrders={isProvisional ? 0 : newOrders}
            hasOtherInputs={hasOtherInputs && !isProvisional}
          />
          <div className="board-solve">{solve}</div>
        </div>
        <div className="board-plan">
          {versions}
          {!isProvisional && (
            <TakeAway>
              <Link href="/sheets" className="button">
                <Icon name="print" /> {text.sheets.title}
              </Link>
              {shape === "board" && board.segments.length > 0 && (
                <PictureButton
                  parts={{ plant, names, held, promised, madeAt: secondsOf(plan.createdAt), frozenUntil }}
                />
              )}
              <FileLinks
                hint={text.board.planFiles}
                files={[
                  [text.board.planCsv, planTableAddress(plan, "csv", language)],
                  [text.board.planXlsx, planTableAddress(plan, "xlsx", language)],
                ]}
              />
            </TakeAway>
          )}
        </div>
        <div className="board-tools">
          <BoardToolbar shape={shape} onShape={showAs} />
          <BoardFilters />
        </div>
        <EditFailure />
        <OthersSteps />
        <LeftOut />
        <FrozenQuestion />
        {board.segments.length === 0 ? (
          <EmptyNotice isInner title={text.board.emptyPlan}>
            <p>{text.board.emptyPlanHint}</p>
            <Link href="/orders" className="button">
              {text.board.toOrders}
            </Link>
          </EmptyNotice>
        ) : rows !== null && rows.rows.length === 0 ? (
          <EmptyNotice isInner title={text.board.noRows}>
            <p>{text.board.noRowsHint[rows.choice]}</p>
          </EmptyNotice>
        ) : shape === "table" ? (
          <PlanTable names={names} held={held} promised={promised} />
        ) : (
          <div className="board-body">
            <div className={isProvisional ? "board-main board-looked-at" : "board-main"}>
              <BoardCanvas
                plant={plant}
                held={held}
                promised={promised}
                names={names}
                frozenUntil={frozenUntil}
                describedBy={`${frozenId} ${keysId}`}
              />
              <p id={frozenId} className="unseen">
                {frozenUntil === null ? "" : text.board.frozen(format.instant(frozenUntil))}
              </p>
              <HoverNote names={names} />
              <CarryStrip canTry={canTry} />
              <NotTaken />
            </div>
            <DetailsPanel plant={plant} names={names} pins={pins} promised={promised} />
          </div>
        )}
        <SpokenSelection held={held} promised={promised} names={names} />
        <footer className="board-foot">
          <details>
            <summary>
              <Icon name="keys" /> {text.board.keysTitle}
            </summary>
            <div id={keysId}>
              <KeyList keys={text.board.keys} />
              <h3 className="key-title">{text.edit.carryKeysTitle}</h3>
              <KeyList keys={text.edit.carryKeys} />
            </div>
          </details>
          <div className="tool-group">
            <NewestStep />
            <span className="hint">{text.board.planAge(format.instant(secondsOf(plan.createdAt)))}</span>
          </div>
        </footer>
      </div>
    </EditsProvider>
  );
}

function KeyList({ keys }: { readonly keys: readonly (readonly [string, string])[] }): JSX.Element {
  return (
    <dl className="key-list">
      {keys.map(([key, what]) => (
        <div key={key}>
          <dt>{key}</dt>
          <dd>{what}</dd>
        </div>
      ))}
    </dl>
  );
}
