import type {
  AlternativesResponse,
  Offer,
  OfferKind,
  PlanResponse,
  PromiseResponse,
} from "@formweek/contracts";
import { useMemo, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { boardPlan } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { OfferCard } from "./offer-card.tsx";

interface AlternativesProps {
  readonly plan: PlanResponse;
  /** The first answer; null: there is none. */
  readonly first: Offer | null;
  readonly answer: PromiseResponse;
  /** The way that is offered instead of the first answer. */
  readonly chosen: OfferKind | null;
  /** Undefined until the server has told. */
  readonly others: AlternativesResponse | undefined;
  readonly error: Error | null;
  readonly onRetry: () => void;
  readonly onChoose: (kind: OfferKind) => void;
}

/** Other ways to meet the enquiry, a card each with its price; and those that lead nowhere. */
export function Alternatives(props: AlternativesProps): JSX.Element {
  const { plan, first, answer, chosen, others, error, onRetry, onChoose } = props;
  const text = useText();
  const { promise } = text;
  const board = useMemo(() => boardPlan(plan.planId, plan.document), [plan]);
  return (
    <section
      className="others"
      aria-label={promise.others}
      aria-busy={others === undefined && error === null}
    >
      <h2>{promise.others}</h2>
      {error !== null && (
        <>
          <FailureWords cause={error} />
          <button type="button" className="button" onClick={onRetry}>
            {text.app.tryAgain}
          </button>
        </>
      )}
      {others === undefined && error === null && <p className="hint">{promise.othersWorking}</p>}
      {others?.offers.length === 0 && <p>{promise.noOthers}</p>}
      {others !== undefined && others.offers.length > 0 && (
        <ul className="offer-cards">
          {others.offers.map((offer) => (
            <OfferCard
              key={offer.kind}
              {...{ board, first, answer, offer, onChoose }}
              isChosen={offer.kind === chosen}
            />
          ))}
        </ul>
      )}
      {others !== undefined && others.none.length > 0 && (
        <details>
          <summary>{promise.nowhere}</summary>
          <ul>
            {others.none.map(({ kind, reason }) => (
              <li key={kind}>
                {promise.kinds[kind]}: {promise.nowhereWhy[reason] ?? reason}.
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
