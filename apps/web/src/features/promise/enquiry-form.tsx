import type { Product } from "@formweek/capacity-model";
import { useEffect, useId, useRef, useState, type JSX } from "react";
import { emptyDraft, readPieces } from "../../kernels/enquiry-draft.ts";
import { useText } from "../../text/text.ts";
import { ProductField } from "./product-field.tsx";
import type { OpenEnquiry } from "./use-enquiry.ts";

interface EnquiryFormProps {
  readonly products: readonly Product[];
  readonly open: OpenEnquiry;
}

/** What the customer asks for; the answer follows what is typed. */
export function EnquiryForm({ products, open }: EnquiryFormProps): JSX.Element {
  const { promise: text } = useText();
  const { draft, change, product } = open;
  const id = useId();
  const productRef = useRef<HTMLInputElement>(null);
  const piecesRef = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (productRef.current?.value === "") productRef.current.focus();
  }, []);
  const arePiecesWrong = draft.pieces.trim() !== "" && readPieces(draft.pieces) === null;
  return (
    <form className="enquiry" onSubmit={(event) => event.preventDefault()}>
      <ProductField
        products={products}
        value={draft.product}
        isMeant={product !== null}
        fieldRef={productRef}
        onType={(typed) => change({ product: typed })}
        onChoose={(typed) => {
          change({ product: typed });
          piecesRef.current?.focus();
        }}
      />
      <div className="enquiry-field">
        <label htmlFor={`${id}-pieces`}>{text.pieces}</label>
        <input
          id={`${id}-pieces`}
          ref={piecesRef}
          className="select"
          type="text"
          inputMode="numeric"
          autoComplete="off"
          placeholder={text.piecesHint}
          value={draft.pieces}
          aria-invalid={arePiecesWrong}
          aria-describedby={`${id}-pieces-note`}
          onChange={(event) => change({ pieces: event.target.value })}
        />
        <p id={`${id}-pieces-note`} className="field-note">
          {arePiecesWrong ? text.piecesWrong : ""}
        </p>
      </div>
      <div className="enquiry-field">
        <label htmlFor={`${id}-day`}>{text.day}</label>
        <input
          id={`${id}-day`}
          className="select"
          type="date"
          value={draft.day}
          onChange={(event) => change({ day: event.target.value })}
        />
      </div>
      <div className="enquiry-field">
        <label htmlFor={`${id}-time`}>{text.time}</label>
        <input
          id={`${id}-time`}
          className="select"
          type="time"
          value={draft.day === "" ? "" : draft.time}
          disabled={draft.day === ""}
          title={text.timeHint}
          onChange={(event) => change({ time: event.target.value })}
        />
      </div>
      <label className="enquiry-parts">
        <input
          type="checkbox"
          checked={draft.partsAllowed}
          onChange={(event) => change({ partsAllowed: event.target.checked })}
        />{" "}
        {text.parts}
      </label>
      <div className="tool-group enquiry-tools">
        <button
          type="button"
          className="button"
          onClick={() => {
            change(emptyDraft);
            productRef.current?.focus();
          }}
        >
          {text.clear}
        </button>
        <CopyLink />
      </div>
    </form>
  );
}

/** The address as it is then: it holds the enquiry. */
export function CopyLink(): JSX.Element {
  const { promise: text } = useText();
  const [isCopied, setCopied] = useState(false);
  return (
    <>
      <button
        type="button"
        className="button"
        title={text.linkHint}
        onClick={() => void navigator.clipboard.writeText(window.location.href).then(() => setCopied(true))}
      >
        {text.copyLink}
      </button>
      <span className="hint" role="status">
        {isCopied ? text.linkCopied : ""}
      </span>
    </>
  );
}
