import { describe, expect, it } from "vitest";
import { pastedFile } from "./pasted-file.ts";

describe("pastedFile", () => {
  it("turns cells of a spreadsheet into CSV, commas and line breaks in cells included", async () => {
    const file = await pastedFile('Order\tCustomer\tPieces\n101\tAlder, Foods\t"1\n000"\n');
    expect(await file?.text()).toBe('Order,Customer,Pieces\n101,"Alder, Foods","1\n000"');
  });

  it("takes CSV with semicolons too", async () => {
    const file = await pastedFile("Order;Pieces\r\n101;5\r\n\r\n");
    expect(await file?.text()).toBe("Order,Pieces\n101,5");
  });

  it("gives rows without a header the one that fits", async () => {
    const file = await pastedFile("101\tCup 200\t40000\t2026-12-05");
    expect(await file?.text()).toBe("order,product,pieces,due\n101,Cup 200,40000,2026-12-05");
  });

  it("refuses a header alone and plain prose", async () => {
    expect(await pastedFile("Order\tPieces")).toBeNull();
    expect(await pastedFile("just a sentence\nand another")).toBeNull();
    expect(await pastedFile("")).toBeNull();
  });
});
