import type { Order, Plant } from "@formweek/capacity-model";
import type { Pin } from "@formweek/scheduler";

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

/**
 * 16 hex digits that tell one set of inputs from another, so that a plan can say what it was made from. Guards against
 * mix-ups, not against forgery. Records are written in their schema's field order, so equal inputs give equal hashes.
 */
export function inputHash(plant: Plant, orders: readonly Order[], pins: readonly Pin[]): string {
  return textHash(JSON.stringify([plant, orders, pins]));
}
