import type { Plant, Product } from "@formweek/capacity-model";

/** Unknown names that suggestions are worked out for; a file of the wrong plant would ask for each of its rows. */
const MOST_SUGGESTIONS = 2000;
/** Letters of an unknown name that are compared; no product has a longer one. */
const COMPARED_LETTERS = 200;

/**
 * Finds products as customers and planners write them: by id or name as it stands, else with spaces, punctuation, accents
 * and case apart. A loose name that two products share finds neither: the wrong one would be made.
 */
export class ProductFinder {
  readonly #exact = new Map<string, Product>();
  readonly #loose = new Map<string, Product | null>();
  readonly #pairs: readonly { readonly id: string; readonly ofId: Pairs; readonly ofName: Pairs }[];
  readonly #suggested = new Map<string, readonly string[]>();

  constructor(plant: Plant) {
    this.#pairs = plant.products.map(({ id, name }) => ({
      id,
      ofId: pairsOf(looseName(id)),
      ofName: pairsOf(looseName(name)),
    }));
    for (const product of plant.products) {
      this.#exact.set(product.id, product);
      this.#addLoose(product.id, product);
      this.#addLoose(product.name, product);
    }
  }

  find(text: string): Product | undefined {
    return this.#exact.get(text) ?? this.#loose.get(looseName(text)) ?? undefined;
  }

  #addLoose(text: string, product: Product): void {
    const name = looseName(text);
    const known = this.#loose.get(name);
    this.#loose.set(name, known === undefined || known === product ? product : null);
  }

  /** Up to three ids that look most like the text, for a remedy; none once very many names were asked for. */
  nearest(text: string): readonly string[] {
    const name = looseName(text.slice(0, COMPARED_LETTERS));
    const known = this.#suggested.get(name);
    if (known !== undefined) return known;
    const nearest = this.#suggested.size >= MOST_SUGGESTIONS ? [] : this.#mostAlike(pairsOf(name));
    if (this.#suggested.size < MOST_SUGGESTIONS) this.#suggested.set(name, nearest);
    return nearest;
  }

  #mostAlike(wanted: Pairs): readonly string[] {
    return this.#pairs
      .map(({ id, ofId, ofName }) => ({
        id,
        likeness: Math.max(likeness(wanted, ofId), likeness(wanted, ofName)),
      }))
      .filter(({ likeness }) => likeness > 0.3)
      .sort((a, b) => b.likeness - a.likeness || (a.id < b.id ? -1 : 1))
      .slice(0, 3)
      .map(({ id }) => id);
  }
}

/** Letters and digits of any script; brackets stay, for they may be all that parts two products. */
const looseName = (text: string): string =>
  text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, "");

type Pairs = ReadonlySet<string>;

/** Neighbouring letters of a word, for Dice's coefficient (Dice 1945; from memory). */
function pairsOf(text: string): Pairs {
  const pairs = new Set<string>();
  for (let index = 0; index + 1 < text.length; index++) pairs.add(text.slice(index, index + 2));
  return pairs;
}

function likeness(one: Pairs, other: Pairs): number {
  if (one.size + other.size === 0) return 0;
  let shared = 0;
  for (const pair of one) if (other.has(pair)) shared++;
  return (2 * shared) / (one.size + other.size);
}
