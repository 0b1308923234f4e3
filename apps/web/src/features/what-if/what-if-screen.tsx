import type { Plant } from "@formweek/capacity-model";
import type { BookedOrder, PlanResponse, Scenario, ScenarioChange } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { EmptyNotice, FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import { ToBoard } from "../../components/to-board.tsx";
import type { Thoroughness } from "../../kernels/scenario-rows.ts";
import { useScenarios } from "../../sync/scenarios.ts";
import { useText } from "../../text/text.ts";
import { ComparisonSection } from "./comparison-section.tsx";
import { FirstScenario } from "./first-scenario.tsx";
import { HelpDesk } from "./help-desk.tsx";
import { ScenarioEditor, type EditedScenario } from "./scenario-editor.tsx";
import { ScenarioList } from "./scenario-list.tsx";
import { SolveDesk } from "./solve-desk.tsx";
import { useScenarioGround } from "./use-scenario-ground.ts";
import { MOST_COMPARED, useWhatIfAddress } from "./use-what-if-address.ts";

interface WhatIfScreenProps {
  readonly plan: PlanResponse | null;
  readonly plant: Plant;
  readonly orders: readonly BookedOrder[];
}

/** Changes of plant and orders planned beside the plan: written, worked out, compared, and one of them adopted. */
export function WhatIfScreen({ plan, plant, orders }: WhatIfScreenProps): JSX.Element {
  const { whatIf: text } = useText();
  if (plan === null)
    return (
      <EmptyNotice title={text.never}>
        <p>{text.neverHint}</p>
        <ToBoard />
      </EmptyNotice>
    );
  return <OpenWhatIf plan={plan} plant={plant} orders={orders} />;
}

interface OpenWhatIfProps extends WhatIfScreenProps {
  readonly plan: PlanResponse;
}

function OpenWhatIf({ plan, plant, orders }: OpenWhatIfProps): JSX.Element {
  const { whatIf: text } = useText();
  const ground = useScenarioGround(plan, plant, orders);
  const scenarios = useScenarios(plant.id);
  const { data } = scenarios;
  return (
    <div className="page page-what-if">
      <div className="page-head">
        <h1>{text.title}</h1>
        <span className="hint">{text.lead}</span>
      </div>
      {data !== undefined ? (
        <Desk ground={ground} scenarios={data} />
      ) : scenarios.error === null ? (
        <LoadingNotice />
      ) : (
        <FailureNotice isInner cause={scenarios.error} onRetry={() => void scenarios.refetch()} />
      )}
    </div>
  );
}

interface DeskProps {
  readonly ground: ReturnType<typeof useScenarioGround>;
  readonly scenarios: readonly Scenario[];
}

function Desk({ ground, scenarios }: DeskProps): JSX.Element {
  const { whatIf: text } = useText();
  const [shown, show] = useWhatIfAddress();
  const [edited, setEdited] = useState<EditedScenario | null>(null);
  const [thoroughness, setThoroughness] = useState<Thoroughness>("quick");
  const [told, setTold] = useState("");
  const compared = shown.compared.flatMap((id) => scenarios.filter((scenario) => scenario.id === id));
  const comparedIds = compared.map(({ id }) => id);
  /** A new scenario is among those compared, as far as there is room. */
  const written = ({ id }: Scenario, words: string): void => {
    setTold(words);
    if (!comparedIds.includes(id) && comparedIds.length < MOST_COMPARED)
      show({ compared: [...comparedIds, id] });
  };
  const begin = (changes: readonly ScenarioChange[], name: string): void =>
    setEdited({ over: null, name, changes });
  return (
    <>
      <div className="what-if-body">
        {scenarios.length === 0 ? (
          <FirstScenario ground={ground} told={told} onBegin={begin} />
        ) : (
          <ScenarioList
            ground={ground}
            scenarios={scenarios}
            compared={comparedIds}
            told={told}
            onCompare={(ids) => show({ compared: ids })}
            onNew={() => begin([], "")}
            onEdit={(over) => setEdited({ over, name: over.name, changes: over.changes })}
            onWritten={written}
            onTold={setTold}
          />
        )}
        <div className="what-if-results">
          {scenarios.length > 0 && (
            <section className="load-card" aria-labelledby="what-if-compare">
              <h2 id="what-if-compare">{text.compare.title}</h2>
              <SolveDesk
                plantId={ground.plantId}
                scenarios={compared}
                thoroughness={thoroughness}
                onThoroughness={setThoroughness}
              />
              <ComparisonSection ground={ground} scenarios={compared} thoroughness={thoroughness} />
            </section>
          )}
          <HelpDesk
            ground={ground}
            thoroughness={thoroughness}
            runId={shown.helpRunId}
            onRun={(helpRunId) => show({ helpRunId })}
            onMade={written}
          />
        </div>
      </div>
      {edited !== null && (
        <ScenarioEditor
          ground={ground}
          edited={edited}
          onSaved={(scenario) => {
            setEdited(null);
            written(scenario, text.saved(scenario.name));
          }}
          onClose={() => setEdited(null)}
        />
      )}
    </>
  );
}
