/** A product as far as it can be sought. */
export interface SoughtProduct {
  readonly id: string;
  readonly name: string;
}

/** How well a word of the search meets a word of a product; less is better, null: not at all. */
const METS = { whole: 0, beginning: 1, within: 2, misspelt: 3 } as const;

/** Words shorter than this are not taken for a misspelling: too many others are one letter away. */
const shortestMisspelt = 4;

/** A word that is not met weighs more than all others however met: customers also say what no record has, such as "ml". */
const missed = 1000;

/**
 * Products that have the words that were typed, in any order, the best match first: whole words before beginnings, those before
 * parts of words, those before words with one letter wrong; among equals the shorter name, which says least besides. Where no
 * product has all words, those that have most of them. Signs between words do not count: "c75-60" and "c75 60" find the same.
 */
export function findProducts<Product extends SoughtProduct>(
  products: readonly Product[],
  typed: string,
): readonly Product[] {
  const sought = wordsOf(typed);
  const ranked = products.map((product) => ({
    product,
    rank: rankOf(sought, [...wordsOf(product.id), ...wordsOf(product.name)]),
  }));
  const fewestMissed = Math.min(...ranked.map(({ rank }) => Math.floor(rank / missed)));
  if (sought.length > 0 && fewestMissed >= sought.length) return [];
  return ranked
    .filter(({ rank }) => Math.floor(rank / missed) === fewestMissed)
    .sort(
      (a, b) =>
        a.rank - b.rank ||
        a.product.name.length - b.product.name.length ||
        a.product.name.localeCompare(b.product.name, "en", { numeric: true }),
    )
    .map(({ product }) => product);
}

/** The product that is meant by a text: its id, or the name of one alone; null: none, or several. */
export function productMeant<Product extends SoughtProduct>(
  products: readonly Product[],
  typed: string,
): Product | null {
  const plain = wordsOf(typed).join(" ");
  if (plain === "") return null;
  const byId = products.find(({ id }) => id === typed.trim());
  if (byId !== undefined) return byId;
  const named = products.filter(({ id, name }) =>
    [id, name].some((each) => wordsOf(each).join(" ") === plain),
  );
  return named.length === 1 ? (named[0] ?? null) : null;
}

/** Lower case, without accents, cut at every sign. */
function wordsOf(text: string): readonly string[] {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.match(/[\p{L}\p{N}]+/gu) ?? [];
}

/** Sum over the words of the search of how each is met best. */
function rankOf(sought: readonly string[], words: readonly string[]): number {
  return sought.reduce(
    (sum, word) => sum + Math.min(missed, ...words.map((each) => meeting(word, each) ?? missed)),
    0,
  );
}

function meeting(sought: string, word: string): number | null {
  if (word === sought) return METS.whole;
  if (word.startsWith(sought)) return METS.beginning;
  if (word.includes(sought)) return METS.within;
  if (sought.length < shortestMisspelt || /\p{N}/u.test(sought)) return null;
  const start = word.slice(0, sought.length);
  return isOneEditAway(sought, word) || isOneEditAway(sought, start) ? METS.misspelt : null;
}

/** One letter more, less or other, or two neighbours exchanged. */
function isOneEditAway(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let same = 0;
  while (same < Math.min(a.length, b.length) && a[same] === b[same]) same += 1;
  const [restA, restB] = [a.slice(same), b.slice(same)];
  if (restA.length !== restB.length)
    return restA.length > restB.length ? restA.slice(1) === restB : restA === restB.slice(1);
  if (restA.slice(1) === restB.slice(1)) return true;
  return restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
}
