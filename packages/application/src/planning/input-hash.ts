import type { Order, Plant } from "@formweek/capacity-model";
import type { Pin } from "@formweek/scheduler";
import type { StockShare } from "../ports/hold-repository.ts";

const PRIME = 0x01000193;

/** FNV-1a over UTF-16 units, 32 bits (Fowler, Noll, Vo), from a given offset basis. */
function fnv1a(text: string, basis: number): string {
  let hash = basis;
  for (let index = 0; index < text.length; index++) {
    hash = Math.imul(hash ^ text.charCodeAt(index), PRIME);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}

/** 16 hex digits that tell texts apart. Guards against mix-ups, not against forgery. */
export function textHash(text: string): string {
  return fnv1a(text, 0x811c9dc5) + fnv1a(text, 0x9747b28c);
}

/** All that a plan is made from. */
export interface HashedInput {
  readonly plant: Plant;
  readonly orders: readonly Order[];
  readonly pins: readonly Pin[];
  readonly stockShares: readonly StockShare[];
}

/**
 * 16 hex digits that tell one set of inputs from another, so that a plan can say what it was made from. Guards against
 * mix-ups, not against forgery. Records are written in their schema's field order, so equal inputs give equal hashes.
 */
export function inputHash({ plant, orders, pins, stockShares }: HashedInput): string {
  const promised = stockShares.length === 0 ? [] : [stockShares];
  return textHash(JSON.stringify([plant, orders, pins, ...promised]));
}
