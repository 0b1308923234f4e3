import { describe, expect, test } from "vitest";
import { closingInReverse } from "./closing.ts";

describe("closing", () => {
  test("goes from the last opened to the first, once", async () => {
    const closed: string[] = [];
    const closing = closingInReverse();
    for (const name of ["store", "queue", "jobs"]) closing.add(() => Promise.resolve(void closed.push(name)));
    await closing.closeAll();
    await closing.closeAll();
    expect(closed).toEqual(["jobs", "queue", "store"]);
  });

  test("one that fails keeps nothing open, and is told at the end", async () => {
    const closed: string[] = [];
    const closing = closingInReverse();
    closing.add(() => Promise.resolve(void closed.push("store")));
    closing.add(() => Promise.reject(new Error("the queue hangs")));
    await expect(closing.closeAll()).rejects.toThrow("the queue hangs");
    expect(closed).toEqual(["store"]);
  });
});
