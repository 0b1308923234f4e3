import { describe, expect, it } from "vitest";
import { en } from "../text/en/en.ts";
import { intentOfCarryKey, intentOfKey, undoKey } from "./keyboard.ts";

const press = (key: string, shiftKey = false) =>
  intentOfKey({ key, shiftKey, ctrlKey: false, altKey: false, metaKey: false }, 1000, 500);

describe("intentOfKey", () => {
  it("leaves the browser's own keys alone", () => {
    expect(press("Tab")).toBeNull();
    expect(
      intentOfKey({ key: "ArrowLeft", shiftKey: false, ctrlKey: false, altKey: true, metaKey: false }, 0, 1),
    ).toBeNull();
    expect(
      intentOfKey({ key: "0", shiftKey: false, ctrlKey: true, altKey: false, metaKey: false }, 0, 1),
    ).toBeNull();
  });

  it("knows every key that the help lists", () => {
    const pressed: Readonly<Record<string, readonly string[]>> = {
      "← →": ["ArrowLeft", "ArrowRight"],
      "↑ ↓": ["ArrowUp", "ArrowDown"],
      "Home End": ["Home", "End"],
      "L, Shift+L": ["l", "L"],
      "+ −": ["+", "-"],
      "Page Up, Page Down": ["PageUp", "PageDown"],
      "0": ["0"],
      N: ["n"],
      H: ["h", "H"],
      B: ["b", "B"],
      M: ["m", "M"],
      Esc: ["Escape"],
    };
    const stepKeys = ["Ctrl+Z", "Ctrl+Shift+Z, Ctrl+Y"];
    expect(new Set(en.board.keys.map(([keys]) => keys))).toEqual(
      new Set([...Object.keys(pressed), ...stepKeys]),
    );
    for (const key of Object.values(pressed).flat()) expect(press(key)).not.toBeNull();
    expect(press("L", true)).toEqual({ kind: "walked", step: "previous late" });
  });
});

describe("intentOfCarryKey", () => {
  const carry = (key: string) =>
    intentOfCarryKey({ key, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false }, 1000, 500);

  it("knows every key that the help lists, and keeps those that move the view", () => {
    const pressed: Readonly<Record<string, readonly string[]>> = {
      "← →": ["ArrowLeft", "ArrowRight"],
      "↑ ↓": ["ArrowUp", "ArrowDown"],
      "Home End": ["Home", "End"],
      Enter: ["Enter"],
      Esc: ["Escape"],
    };
    expect(new Set(en.edit.carryKeys.map(([keys]) => keys))).toEqual(new Set(Object.keys(pressed)));
    for (const key of Object.values(pressed).flat()) expect(carry(key)).not.toBeNull();
    expect(carry("+")).toEqual({ kind: "zoomed", atX: null, factor: 1.5 });
    expect(carry("l")).toBeNull();
    expect(carry("Tab")).toBeNull();
  });
});

describe("undoKey", () => {
  const press = (key: string, held: Partial<Record<"ctrlKey" | "metaKey" | "shiftKey" | "altKey", true>>) =>
    undoKey({ key, shiftKey: false, ctrlKey: false, altKey: false, metaKey: false, ...held });

  it("goes back with Ctrl or Command and Z, forth with Shift too or with Y", () => {
    expect(press("z", { ctrlKey: true })).toBe("undo");
    expect(press("z", { metaKey: true })).toBe("undo");
    expect(press("Z", { ctrlKey: true, shiftKey: true })).toBe("redo");
    expect(press("y", { ctrlKey: true })).toBe("redo");
    expect(press("z", {})).toBeNull();
    expect(press("z", { ctrlKey: true, altKey: true })).toBeNull();
  });
});
