import type { EditRefusal, FitRefusal } from "@formweek/contracts";
import { useMemo, type JSX } from "react";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { planDifference, type ChangedSide } from "../../kernels/plan-difference.ts";
import { rowTopPx } from "../../kernels/row-layout.ts";
import type { BoardState, Carry } from "../../state/board-state.ts";
import { refusalOf } from "../../state/carry.ts";
import { layoutOf } from "../../state/board-view.ts";
import { useText, type Text } from "../../text/text.ts";
import { lotTitle } from "../../format/step-words.ts";
import { useBoard } from "./use-board.ts";

const namedOrders = 3;

/** Where the carried run would go and what that would come to: seen under the board, heard by screen readers. */
export function CarryStrip({ canTry }: { readonly canTry: boolean }): JSX.Element {
  const plan = useBoard((state) => state.plan);
  const carry = useBoard((state) => state.carry);
  const refusal = useBoard(refusalOf);
  const isLow = useBoard(isCarriedLow);
  const isCarrying = plan !== null && carry !== null;
  const look = isLow ? "carry-strip carry-strip-above" : "carry-strip";
  return (
    <div className={isCarrying ? look : undefined} role="status" aria-live="polite" aria-atomic>
      {isCarrying && <Carried plan={plan} carry={carry} refusal={refusal} canTry={canTry} />}
    </div>
  );
}

interface CarriedProps {
  readonly plan: BoardPlan;
  readonly carry: Carry;
  readonly refusal: FitRefusal | null;
  /** Places are tried here, before letting go. */
  readonly canTry: boolean;
}

function Carried({ plan, carry, refusal, canTry }: CarriedProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const naming = useNaming();
  const { trial, place } = carry;
  const isRefused = refusal !== null || (trial?.kind === "refused" && !trial.isFrozen);
  const how = isRefused
    ? text.edit.notHere
    : carry.point === null
      ? text.edit.howByKeys
      : text.edit.howByPointer;
  return (
    <>
      <p>
        <strong>
          {lotTitle(plan, carry.lot, { text, format })} →{" "}
          {refusal === null ? placeWords(plan, carry, text) : plan.lines[place.lineIndex]?.name}
        </strong>
      </p>
      {refusal !== null ? (
        <p className="late-words">{text.edit.doesNotFit(text.causes.misfit(refusal, naming))}</p>
      ) : trial?.kind === "refused" ? (
        <Refused refusal={trial.refusal} isFrozen={trial.isFrozen} />
      ) : trial?.kind === "plan" ? (
        <Effects before={plan} after={trial.plan} />
      ) : (
        !place.isHome && !canTry && <p className="hint">{text.edit.noEffectYet}</p>
      )}
      <p className="hint">{how}</p>
    </>
  );
}

interface RefusedProps {
  readonly refusal: EditRefusal;
  readonly isFrozen: boolean;
}

function Refused({ refusal, isFrozen }: RefusedProps): JSX.Element {
  const { refusals, versions } = useText();
  const { cause, remedy } = refusals.edit(refusal, useNaming());
  return <p className="late-words">{isFrozen ? versions.frozenTrial(cause) : `${cause} ${remedy}`}</p>;
}

/** The place lies in the lower half of the board, which the strip must not cover then. */
function isCarriedLow(state: BoardState): boolean {
  const { carry, view } = state;
  if (carry === null) return false;
  const layout = layoutOf(state);
  return rowTopPx(layout, view.scrollPx, carry.place.lineIndex + 0.5) > layout.heightPx / 2;
}

function placeWords(plan: BoardPlan, { place }: Carry, text: Text): string {
  const line = plan.lines[place.lineIndex]?.name ?? "";
  if (place.isHome) return text.edit.home;
  return place.before === null ? text.edit.last(line) : text.edit.before(line, place.before.orderId);
}

function Effects({ before, after }: { readonly before: BoardPlan; readonly after: BoardPlan }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const found = useMemo(() => planDifference(before, after), [before, after]);
  const figures = [
    { name: text.edit.late, of: found.late, show: format.count },
    {
      name: text.edit.changes,
      of: found.changeHours,
      show: (hours: number) => text.units.hours(format.decimal(hours, 1)),
    },
    { name: text.edit.cost, of: found.cost, show: format.money },
    ...(found.unplanned[0] === found.unplanned[1]
      ? []
      : [{ name: text.edit.unplanned, of: found.unplanned, show: format.count }]),
  ];
  return (
    <>
      <dl className="effects">
        {figures.map(({ name, of: [was, is], show }) => (
          <div key={name} className={show(is) === show(was) ? undefined : is > was ? "worse" : "better"}>
            <dt>{name}</dt>
            <dd>
              {show(is) === show(was) ? text.edit.same(show(was)) : text.edit.fromTo(show(was), show(is))}
            </dd>
          </div>
        ))}
      </dl>
      {found.newlyLate.length > 0 && (
        <p className="late-words">{text.edit.newlyLate(orderList(found.newlyLate, text, format))}</p>
      )}
      {found.onTimeAgain.length > 0 && (
        <p>{text.edit.onTimeAgain(orderList(found.onTimeAgain, text, format))}</p>
      )}
    </>
  );
}

function orderList(orders: readonly ChangedSide[], text: Text, format: Format): string {
  const named = orders
    .slice(0, namedOrders)
    .map(({ orderId, lateSeconds }) =>
      lateSeconds > 0 ? text.edit.lateBy(orderId, format.span(lateSeconds)) : orderId,
    )
    .join(", ");
  const rest = orders.length - namedOrders;
  return rest > 0 ? text.edit.more(named, format.count(rest)) : named;
}
