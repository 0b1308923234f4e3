import type { Product } from "@formweek/capacity-model";
import type { PromiseEnquiry } from "@formweek/contracts";
import { useEffect, useMemo, useRef, useState } from "react";
import { useSearchParams } from "wouter";
import {
  enquiryOf,
  readEnquiryAddress,
  writeEnquiryAddress,
  type EnquiryDraft,
} from "../../kernels/enquiry-draft.ts";
import { productMeant } from "../../kernels/product-finder.ts";

/** What is typed rests so long before it is asked for. */
const restMs = 120;

export interface OpenEnquiry {
  readonly draft: EnquiryDraft;
  readonly change: (part: Partial<EnquiryDraft>) => void;
  /** The product that is meant; null: not clear yet. */
  readonly product: Product | null;
  /** What is asked for, once typing rests; null while something is missing. */
  readonly enquiry: PromiseEnquiry | null;
}

/** The enquiry as it is typed. It lives in the address, so that a reload or a sent link asks the same. */
export function useEnquiry(products: readonly Product[]): OpenEnquiry {
  const [address, setAddress] = useSearchParams();
  const known = useRef(address.toString());
  const [draft, setDraft] = useState(() => shownDraft(products, address));
  const product = useMemo(() => productMeant(products, draft.product), [products, draft.product]);
  const wished = JSON.stringify(enquiryOf(draft, product?.id ?? null));
  const rested = useRested(wished);
  const enquiry = useMemo(() => JSON.parse(rested) as PromiseEnquiry | null, [rested]);

  // somebody else changed the address: a link, or the way back
  useEffect(() => {
    if (address.toString() === known.current) return;
    known.current = address.toString();
    setDraft(shownDraft(products, address));
  }, [address, products]);

  useEffect(() => {
    const timer = setTimeout(() => {
      const named = { ...draft, product: product?.id ?? draft.product };
      const next = writeEnquiryAddress(named, new URLSearchParams(window.location.search));
      if (next.toString() === known.current) return;
      known.current = next.toString();
      setAddress(next, { replace: true });
    }, restMs);
    return () => clearTimeout(timer);
  }, [draft, product, setAddress]);

  return { draft, change: (part) => setDraft((before) => ({ ...before, ...part })), product, enquiry };
}

/** The address names a product by its id; the field shows its name. */
function shownDraft(products: readonly Product[], address: URLSearchParams): EnquiryDraft {
  const draft = readEnquiryAddress(address);
  const product = products.find(({ id }) => id === draft.product);
  return product === undefined ? draft : { ...draft, product: fieldText(products, product) };
}

/** A product as the field says it: its name, or its id where others have the same name. */
export function fieldText(products: readonly Product[], product: Product): string {
  return productMeant(products, product.name)?.id === product.id ? product.name : product.id;
}

/** A value once it has stood still for a moment. */
function useRested(value: string): string {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), restMs);
    return () => clearTimeout(timer);
  }, [value]);
  return rested;
}
