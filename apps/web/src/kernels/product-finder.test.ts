import { describe, expect, it } from "vitest";
import { findProducts, productMeant } from "./product-finder.ts";

const products = [
  { id: "C75-60-090 white", name: "Cup 75 PP white" },
  { id: "C75-60-090 natural", name: "Cup 75 PP natural" },
  { id: "T95-0500 white", name: "Tub 95 PP white" },
  { id: "D95 clear", name: "Lid 95 APET clear" },
  { id: "D75 clear", name: "Lid 75 APET clear" },
];
const ids = (typed: string): readonly string[] => findProducts(products, typed).map(({ id }) => id);

describe("findProducts", () => {
  it("takes words in any order and any case", () => {
    expect(ids("WHITE cup")).toEqual(["C75-60-090 white"]);
    expect(ids("clear 95")).toEqual(["D95 clear"]);
  });

  it("puts whole words before beginnings, and those before parts of words", () => {
    const named = ["Cup 175", "Cup 750", "Cup 75 with a long name"].map((name) => ({ id: name, name }));
    const found = findProducts(named, "75").map(({ name }) => name);
    expect(found).toEqual(["Cup 75 with a long name", "Cup 750", "Cup 175"]);
    expect(ids("95")[0]).toBe("T95-0500 white");
  });

  it("finds ids however they are cut", () => {
    expect(ids("c75-60 nat")).toEqual(["C75-60-090 natural"]);
    expect(ids("c75 60 nat")).toEqual(["C75-60-090 natural"]);
  });

  it("bears one wrong letter in a word, but no wrong figure", () => {
    expect(ids("whiet tub")).toEqual(["T95-0500 white"]);
    expect(ids("naturl")).toEqual(["C75-60-090 natural"]);
    expect(ids("0501")).toEqual([]);
  });

  it("passes over words that no product has, as long as one is left", () => {
    expect(ids("white tub, 500 ml")).toEqual(["T95-0500 white"]);
  });

  it("finds everything while nothing is typed, and nothing for what is not there", () => {
    expect(ids(" ")).toHaveLength(products.length);
    expect(ids("bucket")).toEqual([]);
  });
});

describe("productMeant", () => {
  it("takes an id or a name that only one has", () => {
    expect(productMeant(products, "T95-0500 white")?.id).toBe("T95-0500 white");
    expect(productMeant(products, "tub 95 pp WHITE")?.id).toBe("T95-0500 white");
    expect(productMeant(products, "tub")).toBeNull();
    expect(productMeant(products, "")).toBeNull();
    const twins = [...products, { id: "other", name: "Tub 95 PP white" }];
    expect(productMeant(twins, "Tub 95 PP white")).toBeNull();
  });
});
