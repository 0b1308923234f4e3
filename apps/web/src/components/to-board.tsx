import type { JSX } from "react";
import { Link } from "wouter";
import { useText } from "../text/text.ts";

/** The way back to the board. */
export function ToBoard(): JSX.Element {
  return (
    <Link href="/" className="button">
      {useText().sheets.toBoard}
    </Link>
  );
}
