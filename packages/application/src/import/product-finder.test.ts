import type { Plant, Product } from "@formweek/capacity-model";
import { describe, expect, it } from "vitest";
import { ProductFinder } from "./product-finder.ts";

const plantOf = (...products: readonly (readonly [id: string, name: string])[]): Plant =>
  ({ products: products.map(([id, name]) => ({ id, name }) as Product) }) as unknown as Plant;
const finder = new ProductFinder(
  plantOf(
    ["A-1", "Cup (white)"],
    ["A1", "Cup (black)"],
    ["T 20", "Täglich Tub"],
    ["K1", "Чашка"],
    ["K2", "Миска"],
    ["D1", "Lid"],
    ["D2", "Lid"],
  ),
);

describe("finding a product by what stands in a file", () => {
  it.each<[string, string | undefined]>([
    ["A-1", "A-1"],
    ["A1", "A1"],
    ["cup (BLACK)", "A1"],
    ["t20", "T 20"],
    ["taglich tub", "T 20"],
    ["миска", "K2"],
    ["K-1", "K1"],
  ])("%s is %s", (text, id) => {
    expect(finder.find(text)?.id).toBe(id);
  });

  it.each(["a 1", "lid", "", "()", "杯"])("%s names none of them for sure", (text) => {
    expect(finder.find(text)).toBeUndefined();
  });

  it("suggests what looks most like it, and nothing for what looks like none", () => {
    expect(finder.nearest("Cup whites")[0]).toBe("A-1");
    expect(finder.nearest("xyz")).toEqual([]);
  });

  it("gives up suggesting when nothing in a long file is known", () => {
    const tired = new ProductFinder(plantOf(["C1", "Cup white"]));
    const first = tired.nearest("cup whit");
    const asked = Array.from({ length: 3000 }, (_, index) => tired.nearest(`cup whit${index}`).length);
    expect(first).toEqual(["C1"]);
    expect(asked[0]).toBe(1);
    expect(asked[2999]).toBe(0);
    expect(tired.nearest("cup whit")).toEqual(["C1"]);
  });
});
