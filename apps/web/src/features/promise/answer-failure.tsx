import type { Product } from "@formweek/capacity-model";
import type { JSX } from "react";
import { FailureNotice } from "../../components/notice.tsx";
import { CallError } from "../../sync/client.ts";
import { useText } from "../../text/text.ts";
import { fieldText } from "./use-enquiry.ts";

interface AnswerFailureProps {
  readonly cause: unknown;
  readonly products: readonly Product[];
  readonly onProduct: (text: string) => void;
  readonly onRetry: () => void;
}

/** Why there is no answer, field by field, with the products that were perhaps meant. */
export function AnswerFailure({ cause, products, onProduct, onRetry }: AnswerFailureProps): JSX.Element {
  const { promise: text } = useText();
  const nearest = cause instanceof CallError ? (cause.problem.nearest ?? []) : [];
  const known = products.filter(({ id }) => nearest.includes(id));
  return (
    <div className="answer">
      <FailureNotice isInner cause={cause} onRetry={onRetry} />
      {known.length > 0 && (
        <p className="tool-group">
          {text.nearest}{" "}
          {known.map((product) => (
            <button
              key={product.id}
              type="button"
              className="button"
              onClick={() => onProduct(fieldText(products, product))}
            >
              {product.name}
            </button>
          ))}
        </p>
      )}
    </div>
  );
}
