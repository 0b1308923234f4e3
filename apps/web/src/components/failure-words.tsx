import type { JSX } from "react";
import { useNaming } from "../format/use-naming.ts";
import { useText } from "../text/text.ts";
import { problemInWords } from "./notice.tsx";

/** Why a call within a dialog or panel failed, and what to do. */
export function FailureWords({ cause }: { readonly cause: unknown }): JSX.Element {
  const problem = problemInWords(cause, useText(), useNaming());
  return (
    <p role="alert" className="late-words">
      <strong>{problem.title}</strong> {problem.cause} {problem.remedy}
    </p>
  );
}
