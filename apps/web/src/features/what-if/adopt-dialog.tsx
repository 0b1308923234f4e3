import type { ScenarioChange } from "@formweek/contracts";
import type { JSX } from "react";
import { useLocation } from "wouter";
import { FailureWords } from "../../components/failure-words.tsx";
import { LongHours } from "../../components/long-hours.tsx";
import { Modal } from "../../components/modal.tsx";
import { useFormat } from "../../format/use-format.ts";
import {
  figureRows,
  scenarioSeconds,
  type Thoroughness,
  type WorkedOut,
} from "../../kernels/scenario-rows.ts";
import { shiftSpell } from "../../kernels/shift-offer.ts";
import { useAdoptScenario } from "../../sync/scenarios.ts";
import { useStartRun } from "../../sync/solves.ts";
import { useWorkingPlan } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { FigureDifference, sayFigure } from "./figure-words.tsx";
import { StartFailure } from "./start-failure.tsx";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface AdoptDialogProps {
  readonly ground: ScenarioGround;
  readonly scenario: WorkedOut;
  readonly thoroughness: Thoroughness;
  readonly onClose: () => void;
}

/** What is changed in earnest by a scenario, with the usual caution, and how it is taken back. */
export function AdoptDialog({ ground, scenario, thoroughness, onClose }: AdoptDialogProps): JSX.Element {
  const {
    whatIf: { adoption: text, solve },
  } = useText();
  const [, go] = useLocation();
  const working = useWorkingPlan(ground.plantId);
  const adopt = useAdoptScenario(ground.plantId);
  const start = useStartRun(ground.plantId);
  const { changes, outcome } = scenario;
  const revision = working.data?.revision;
  const isOutdated = !outcome.isCurrent && !adopt.isPending && !adopt.isSuccess;
  const mayWorkOut = isOutdated || adopt.error?.problem.status === 409;
  const again = (): void =>
    start.mutate(
      { kind: "scenarios", scenarioIds: [scenario.id], seconds: scenarioSeconds(1, thoroughness) },
      { onSuccess: onClose },
    );
  return (
    <Modal title={text.title(scenario.name)} onClose={onClose}>
      <p>{text.lead}</p>
      <Changes title={text.plant} ground={ground} changes={changes.filter((change) => !isOfOrders(change))} />
      <Changes title={text.orders} ground={ground} changes={changes.filter(isOfOrders)} />
      <p>{text.figures}</p>
      <Figures outcome={outcome} />
      {changes.map((change, place) =>
        change.kind === "add shift" ? <ShiftCaution key={place} ground={ground} change={change} /> : null,
      )}
      <p className="hint">{text.arrange}</p>
      <p className="hint">{text.back}</p>
      {isOutdated && (
        <p role="alert" className="late-words">
          {text.outdated}
        </p>
      )}
      {adopt.error !== null && !isOutdated && <FailureWords cause={adopt.error} />}
      {start.error !== null && <StartFailure cause={start.error} scenarios={[scenario]} />}
      <div className="tool-group">
        {mayWorkOut ? (
          <button type="button" className="button button-main" disabled={start.isPending} onClick={again}>
            {solve.again}
          </button>
        ) : (
          <button
            type="button"
            className="button button-main"
            disabled={revision === undefined || adopt.isPending}
            onClick={() => {
              if (revision === undefined) return;
              adopt.mutate(
                { scenarioId: scenario.id, scenarioRevision: scenario.revision, revision },
                { onSuccess: () => go("/") },
              );
            }}
          >
            {adopt.isPending ? text.adopting : text.now}
          </button>
        )}
        <button type="button" className="button" onClick={onClose}>
          {text.cancel}
        </button>
      </div>
    </Modal>
  );
}

const isOfOrders = ({ kind }: ScenarioChange): boolean =>
  kind === "cancel order" || kind === "rush order" || kind === "change order";

interface ChangesProps {
  readonly title: string;
  readonly ground: ScenarioGround;
  readonly changes: readonly ScenarioChange[];
}

function Changes({ title, ground, changes }: ChangesProps): JSX.Element | null {
  if (changes.length === 0) return null;
  return (
    <div>
      <h3>{title}</h3>
      <ul>
        {changes.map((change, place) => (
          <li key={place}>{ground.say(change)}</li>
        ))}
      </ul>
    </div>
  );
}

/** Only what differs, and the late orders. */
function Figures({ outcome }: { readonly outcome: WorkedOut["outcome"] }): JSX.Element {
  const {
    whatIf: { compare: text },
  } = useText();
  const format = useFormat();
  const told = figureRows.filter(
    (name) => name === "lateOrders" || outcome.with[name] !== outcome.without[name],
  );
  return (
    <ul>
      {told.map((name) => (
        <li key={name}>
          {text.rows[name]}: {sayFigure(name, outcome.with[name], format)},{" "}
          <FigureDifference name={name} by={outcome.with[name] - outcome.without[name]} />
        </li>
      ))}
    </ul>
  );
}

interface ShiftCautionProps {
  readonly ground: ScenarioGround;
  readonly change: Extract<ScenarioChange, { readonly kind: "add shift" }>;
}

function ShiftCaution({ ground, change: { shift } }: ShiftCautionProps): JSX.Element | null {
  const spell = shiftSpell(ground.clock, shift.date, shift);
  return spell === null ? null : (
    <LongHours plan={ground.plan} clock={ground.clock} spell={spell} shift={shift} />
  );
}
