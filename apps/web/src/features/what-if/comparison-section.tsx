import type { Scenario } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { comparisonOf, type Thoroughness, type WorkedOut } from "../../kernels/scenario-rows.ts";
import { useText } from "../../text/text.ts";
import { AdoptDialog } from "./adopt-dialog.tsx";
import { ComparisonTable } from "./comparison-table.tsx";
import { TurnedOrders } from "./turned-orders.tsx";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface ComparisonSectionProps {
  readonly ground: ScenarioGround;
  /** Those that are ticked. */
  readonly scenarios: readonly Scenario[];
  readonly thoroughness: Thoroughness;
}

/** What came of the scenarios that are ticked, in figures and by the orders that change sides. */
export function ComparisonSection({
  ground,
  scenarios,
  thoroughness,
}: ComparisonSectionProps): JSX.Element | null {
  const {
    whatIf: { compare: text },
  } = useText();
  const [adoptedId, setAdopted] = useState<string | null>(null);
  const comparison = comparisonOf(scenarios);
  const missing = scenarios.filter(({ outcome }) => outcome === null).map(({ name }) => name);
  const workedOut = (comparison?.columns ?? []).flatMap(({ scenario }) =>
    scenario === null ? [] : [scenario],
  );
  const toAdopt: WorkedOut | undefined = workedOut.find(({ id }) => id === adoptedId);
  return (
    <>
      {missing.length > 0 && <p className="hint">{text.missing(missing.join(", "))}</p>}
      {comparison !== null && (
        <>
          <ComparisonTable comparison={comparison} onAdopt={({ id }) => setAdopted(id)} />
          <p className="hint">
            {comparison.isOfOneRun ? text.against : text.manyRuns} {text.priceNote}
          </p>
          <h3>{text.turned}</h3>
          <div className="turned">
            {workedOut.map((scenario) => (
              <TurnedOrders
                key={scenario.id}
                ground={ground}
                name={scenario.name}
                turned={scenario.outcome.turned}
              />
            ))}
          </div>
        </>
      )}
      {toAdopt !== undefined && (
        <AdoptDialog
          ground={ground}
          scenario={toAdopt}
          thoroughness={thoroughness}
          onClose={() => setAdopted(null)}
        />
      )}
    </>
  );
}
