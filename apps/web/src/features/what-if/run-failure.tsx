import type { SolveRunResponse } from "@formweek/contracts";
import type { JSX } from "react";
import { useNaming } from "../../format/use-naming.ts";
import { useText } from "../../text/text.ts";

/** Why a run failed, in words. */
export function RunFailure({ run }: { readonly run: SolveRunResponse }): JSX.Element | null {
  const text = useText();
  const naming = useNaming();
  if (run.state !== "failed") return null;
  const problem = run.problem === null ? null : text.refusals.problem(run.problem, naming);
  return (
    <div role="alert" className="late-words">
      <p>
        {text.whatIf.solve.failed} {problem?.cause} {problem?.remedy}
      </p>
      {problem !== null && problem.faults.length > 0 && (
        <ul>
          {problem.faults.map((fault) => (
            <li key={`${fault.path} ${fault.problem}`}>
              {fault.problem} {fault.remedy}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
