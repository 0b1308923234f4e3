import type { PlanSummary, TradeOffFindings } from "@formweek/contracts";
import { useEffect, useRef, useState, type JSX } from "react";
import { tellingAxes, type Axes } from "../../kernels/trade-off-chart.ts";
import { useText } from "../../text/text.ts";
import { CompareChart } from "./compare-chart.tsx";
import { CompareTable } from "./compare-table.tsx";

interface CompareDialogProps {
  readonly findings: TradeOffFindings;
  /** Of the plan on the board; null where there is none. */
  readonly standing: PlanSummary | null;
  readonly onChoose: (place: number) => void;
  readonly onClose: () => void;
}

/** Several plans as a picture with a table beside it, to choose one of. */
export function CompareDialog({ findings, standing, onChoose, onClose }: CompareDialogProps): JSX.Element {
  const { compare: text } = useText();
  const dialog = useRef<HTMLDialogElement>(null);
  const [axes, setAxes] = useState<Axes>(() => tellingAxes(findings.plans.map(({ values }) => values)));
  const [pointed, setPointed] = useState<number | null>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="dialog compare" aria-labelledby="compare-title" onClose={onClose}>
      <h2 id="compare-title">{text.title}</h2>
      <p className="hint">{text.lead}</p>
      <div className="compare-body">
        {findings.criteria.length > 1 && (
          <div className="compare-picture">
            <div className="tool-group">
              <AxisChoice
                label={text.up}
                findings={findings}
                value={axes[1]}
                onChange={(up) => setAxes([axes[0], up])}
              />
              <AxisChoice
                label={text.across}
                findings={findings}
                value={axes[0]}
                onChange={(across) => setAxes([across, axes[1]])}
              />
            </div>
            <CompareChart findings={findings} axes={axes} pointed={pointed} onPoint={setPointed} />
          </div>
        )}
        <CompareTable
          findings={findings}
          standing={standing}
          pointed={pointed}
          onPoint={setPointed}
          onChoose={onChoose}
        />
      </div>
      <button type="button" className="button" onClick={onClose}>
        {text.close}
      </button>
    </dialog>
  );
}

interface AxisChoiceProps {
  readonly label: string;
  readonly findings: TradeOffFindings;
  readonly value: number;
  readonly onChange: (criterion: number) => void;
}

function AxisChoice({ label, findings, value, onChange }: AxisChoiceProps): JSX.Element {
  const { compare: text } = useText();
  return (
    <label className="solve-seconds">
      <span>{label}</span>
      <select className="select" value={value} onChange={(event) => onChange(Number(event.target.value))}>
        {findings.criteria.map((criterion, index) => (
          <option key={criterion} value={index}>
            {text.criteria[criterion]}
          </option>
        ))}
      </select>
    </label>
  );
}
