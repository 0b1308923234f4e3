import { describe, expect, it } from "vitest";
import { en } from "../text/en/en.ts";
import { intentOfKey } from "./keyboard.ts";

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
      Esc: ["Escape"],
    };
    expect(new Set(en.board.keys.map(([keys]) => keys))).toEqual(new Set(Object.keys(pressed)));
    for (const key of Object.values(pressed).flat()) expect(press(key)).not.toBeNull();
    expect(press("L", true)).toEqual({ kind: "walked", step: "previous late" });
  });
});
