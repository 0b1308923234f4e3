import type { JSX } from "react";

const paths = {
  plus: "M8 3v10M3 8h10",
  minus: "M3 8h10",
  left: "M10 3 5 8l5 5",
  right: "m6 3 5 5-5 5",
  close: "m4 4 8 8M12 4l-8 8",
  find: "M7 12A5 5 0 1 0 7 2a5 5 0 0 0 0 10Zm3.6-1.4L14 14",
  flag: "M4 14V2h8l-2 3 2 3H4",
  import: "M8 2v8m0 0 3-3m-3 3L5 7M2 12v2h12v-2",
  export: "M8 10V2m0 0 3 3M8 2 5 5M2 12v2h12v-2",
  stop: "M4 4h8v8H4z",
  up: "m3 10 5-5 5 5",
  down: "m3 6 5 5 5-5",
  warn: "M8 2 1.5 13.5h13L8 2Zm0 4.5v3m0 1.8v.2",
  check: "m3 8.5 3.5 3.5L13 4.5",
  print: "M4 6V2h8v4M4 11H1.5V6h13v5H12M4 9h8v5H4z",
  lock: "M3.5 7h9v6.5h-9zM5.5 7V5a2.5 2.5 0 0 1 5 0v2",
  tag: "M1.5 8 5.5 3.5h9v9h-9zM6 8h1.5",
  undo: "M6 3 2.5 6.5 6 10M2.5 6.5H10a3.5 3.5 0 0 1 0 7H6",
  redo: "m10 3 3.5 3.5L10 10M13.5 6.5H6a3.5 3.5 0 0 0 0 7h4",
  settings:
    "M2 4.5h6m4 0h2M2 11.5h2m4 0h6M8 4.5a2 2 0 1 0 4 0 2 2 0 0 0-4 0M4 11.5a2 2 0 1 0 4 0 2 2 0 0 0-4 0",
  filter: "M1.5 3h13L9.5 9v4.5l-3 1V9z",
  keys: "M1.5 4h13v8h-13zM4 6.5h.5M7 6.5h.5M10 6.5h.5M5 9.5h6",
} as const;

export type IconName = keyof typeof paths;

/** A small line drawing beside a word; never alone without a label on its button. */
export function Icon({ name }: { readonly name: IconName }): JSX.Element {
  return (
    <svg className="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
      <path d={paths[name]} />
    </svg>
  );
}
