import type { Plant, Product } from "@formweek/capacity-model";
import { normalName } from "./read-table.ts";

/** Finds products as customers and planners write them: by id or name, spaces and case apart. */
export class ProductFinder {
  readonly #byName = new Map<string, Product>();
  readonly #products: readonly Product[];

  constructor(plant: Plant) {
    this.#products = plant.products;
    for (const product of plant.products) this.#byName.set(normalName(product.name), product);
    for (const product of plant.products) this.#byName.set(normalName(product.id), product);
  }

  find(text: string): Product | undefined {
    return this.#byName.get(normalName(text));
  }

  /** Up to three ids that look most like the text, for a remedy. */
  nearest(text: string): readonly string[] {
    const wanted = pairsOf(normalName(text));
    return this.#products
      .map((product) => ({
        id: product.id,
        likeness: Math.max(
          likeness(wanted, pairsOf(normalName(product.id))),
          likeness(wanted, pairsOf(normalName(product.name))),
        ),
      }))
      .filter(({ likeness }) => likeness > 0.3)
      .sort((a, b) => b.likeness - a.likeness || (a.id < b.id ? -1 : 1))
      .slice(0, 3)
      .map(({ id }) => id);
  }
}

/** Neighbouring letters of a word, for Dice's coefficient (Dice 1945; from memory). */
function pairsOf(text: string): ReadonlySet<string> {
  const pairs = new Set<string>();
  for (let index = 0; index + 1 < text.length; index++) pairs.add(text.slice(index, index + 2));
  return pairs;
}

function likeness(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  if (one.size + other.size === 0) return 0;
  const shared = [...one].filter((pair) => other.has(pair)).length;
  return (2 * shared) / (one.size + other.size);
}
