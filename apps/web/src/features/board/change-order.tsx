import type { OrderTerms, RemedyChange } from "@formweek/contracts";
import type { JSX } from "react";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { termsOf } from "../../kernels/order-terms.ts";
import { useChangeOrders } from "../../sync/order-changes.ts";
import { useOrders } from "../../sync/queries.ts";
import { useText } from "../../text/text.ts";

/** A change that lies in the order's own fields. */
type OrderRemedy = Extract<RemedyChange, { kind: "later due" | "lots" }>;

export function isOfOrder(change: RemedyChange): change is OrderRemedy {
  return change.kind === "later due" || change.kind === "lots";
}

interface ChangeOrderProps {
  readonly plantId: string;
  readonly change: OrderRemedy;
}

/** Writes a remedy into the order, as a step of the order book that can be taken back there; the next plan takes it in. */
export function ChangeOrder({ plantId, change }: ChangeOrderProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const { data: book } = useOrders(plantId);
  const { mutate, isPending, isSuccess, error } = useChangeOrders(plantId);
  const order = book?.orders.find(({ id }) => id === change.orderId);
  const problem = error === null ? null : problemInWords(error, text, naming);
  const apply = (): void => {
    if (order === undefined) return;
    const before = termsOf(order);
    mutate({ as: "change", of: null, changes: [{ before, after: changed(before, change) }] });
  };
  return (
    <>
      <button
        type="button"
        className="button"
        disabled={order === undefined || isPending || isSuccess}
        onClick={apply}
      >
        {text.remedies.changeOrder[change.kind]}
      </button>
      <span role="status">{isSuccess && text.remedies.orderChanged}</span>
      {problem !== null && (
        <p role="alert" className="late-words">
          {problem.title} {problem.cause} {problem.remedy}
        </p>
      )}
    </>
  );
}

function changed(order: OrderTerms, change: OrderRemedy): OrderTerms {
  return change.kind === "lots" ? { ...order, partsAllowed: true } : { ...order, dueAt: change.at };
}
