import type { Product } from "@formweek/capacity-model";
import { useId, useMemo, useRef, useState, type JSX, type KeyboardEvent, type RefObject } from "react";
import { useFormat } from "../../format/use-format.ts";
import { findProducts } from "../../kernels/product-finder.ts";
import { useText } from "../../text/text.ts";
import { fieldText } from "./use-enquiry.ts";

const mostShown = 10;

interface ProductFieldProps {
  readonly products: readonly Product[];
  readonly value: string;
  /** What is typed names one product. */
  readonly isMeant: boolean;
  readonly fieldRef: RefObject<HTMLInputElement | null>;
  readonly onType: (text: string) => void;
  /** One of the products found was chosen. */
  readonly onChoose: (text: string) => void;
}

/** A product found as it is typed: the best match first, taken by Enter or Tab, walked by the arrows. */
export function ProductField(props: ProductFieldProps): JSX.Element {
  const { products, value, isMeant, fieldRef, onType, onChoose } = props;
  const { promise: text } = useText();
  const format = useFormat();
  const id = useId();
  const list = useRef<HTMLUListElement>(null);
  const [isOpen, setOpen] = useState(false);
  const [place, setPlace] = useState(0);
  const found = useMemo(() => findProducts(products, value), [products, value]);
  const shown = found.slice(0, mostShown);
  const active = isOpen ? shown[place] : undefined;
  const choose = (product: Product): void => {
    setOpen(false);
    onChoose(fieldText(products, product));
  };
  const walk = (by: 1 | -1): void => {
    setOpen(true);
    if (shown.length === 0) return;
    const next = isOpen ? (place + by + shown.length) % shown.length : 0;
    setPlace(next);
    list.current?.children[next]?.scrollIntoView({ block: "nearest" });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      walk(event.key === "ArrowDown" ? 1 : -1);
    } else if (event.key === "Enter" && active !== undefined) {
      event.preventDefault();
      choose(active);
    } else if (event.key === "Tab" && !event.shiftKey && active !== undefined && value.trim() !== "") {
      event.preventDefault();
      choose(active);
    } else if (event.key === "Escape" && isOpen) {
      event.stopPropagation();
      setOpen(false);
    }
  };
  return (
    <div className="enquiry-product">
      <label htmlFor={`${id}-field`}>{text.product}</label>
      <input
        id={`${id}-field`}
        ref={fieldRef}
        className="select"
        type="text"
        role="combobox"
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={active === undefined ? undefined : `${id}-${place}`}
        autoComplete="off"
        spellCheck={false}
        placeholder={text.productHint}
        value={value}
        onChange={(event) => {
          onType(event.target.value);
          setPlace(0);
          setOpen(true);
        }}
        onKeyDown={onKeyDown}
        onBlur={() => setOpen(false)}
        onClick={() => setOpen(!isMeant)}
      />
      <ul
        id={`${id}-list`}
        ref={list}
        className="product-list"
        role="listbox"
        aria-label={text.products}
        hidden={!isOpen || shown.length === 0}
      >
        {shown.map((product, at) => (
          <li
            key={product.id}
            id={`${id}-${at}`}
            role="option"
            aria-selected={at === place}
            // before the field loses the focus, which would close the list
            onPointerDown={(event) => {
              event.preventDefault();
              choose(product);
            }}
          >
            <span>{product.name}</span>
            <span className="hint">{product.id}</span>
          </li>
        ))}
      </ul>
      {isOpen && found.length > mostShown && (
        <p className="hint product-more">{text.moreProducts(format.count(found.length - mostShown))}</p>
      )}
      <p className="field-note" role="status">
        {value.trim() === "" || isMeant
          ? ""
          : found.length === 0
            ? text.noProduct
            : isOpen
              ? ""
              : text.chooseProduct}
      </p>
    </div>
  );
}
