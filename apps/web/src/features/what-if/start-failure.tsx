import type { Scenario } from "@formweek/contracts";
import type { JSX } from "react";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { useText } from "../../text/text.ts";

interface StartFailureProps {
  readonly cause: unknown;
  /** Those that were to be worked out, in that order. */
  readonly scenarios: readonly Scenario[];
}

/** Why a run over scenarios was not begun: what stands against which change. */
export function StartFailure({ cause, scenarios }: StartFailureProps): JSX.Element {
  const { title, cause: why, remedy, faults } = problemInWords(cause, useText(), useNaming());
  return (
    <div role="alert" className="late-words">
      <p>
        {title} {faults.length === 0 && `${why} ${remedy}`}
      </p>
      {faults.length > 0 && (
        <ul>
          {faults.map((fault) => (
            <li key={`${fault.path} ${fault.problem}`}>
              {scenarioOf(fault.path, scenarios)} {fault.problem} {fault.remedy}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** "Saturday shift:" of a path such as "scenarioIds.0.changes.1.mouldId". */
function scenarioOf(path: string, scenarios: readonly Scenario[]): string {
  const [, place] = /^scenarioIds\.(\d+)/.exec(path) ?? [];
  const name = place === undefined ? undefined : scenarios[Number(place)]?.name;
  return name === undefined ? "" : `${name}:`;
}
