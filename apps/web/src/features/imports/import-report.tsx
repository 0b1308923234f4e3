import { useEffect, useRef, useState, type JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { ImportReport } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import type { CallError } from "../../sync/client.ts";
import { useText, type Text } from "../../text/text.ts";
import { ChangeList } from "./change-list.tsx";
import { FaultTable } from "./fault-table.tsx";

interface ImportReportProps {
  readonly report: ImportReport;
  /** Plant whose page this is. */
  readonly openPlantId: string;
  readonly plant: Plant | undefined;
  readonly isAccepting: boolean;
  readonly failure: CallError | null;
  readonly onAccept: () => void;
  readonly onCheckAgain: () => void;
  readonly onLeave: () => void;
}

/** What a checked file would do: counts, every bad row, every row that cannot be planned; accept or leave. */
export function ImportReportView({
  report,
  openPlantId,
  plant,
  isAccepting,
  failure,
  onAccept,
  onCheckAgain,
  onLeave,
}: ImportReportProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const format = useFormat();
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const problem = failure === null ? null : problemInWords(failure, text, naming);
  const { summary } = report;
  const counts = [
    { label: text.imports.rows, value: report.rows, tone: "" },
    { label: text.imports.added, value: summary.added, tone: "" },
    { label: text.imports.changed, value: summary.changed, tone: "" },
    { label: text.imports.unchanged, value: summary.unchanged, tone: "" },
    { label: text.imports.bad, value: summary.bad, tone: summary.bad > 0 ? "late" : "" },
    {
      label: text.imports.cannot,
      value: summary.cannotBePlanned,
      tone: summary.cannotBePlanned > 0 ? "late" : "",
    },
  ];
  return (
    <div className="page report">
      <div className="page-head">
        <h1 ref={title} tabIndex={-1}>
          {text.imports.reportTitle(report.files)}
        </h1>
        <span className="hint">{text.imports.nothingChanged}</span>
        {report.plantId !== openPlantId && (
          <strong>
            {report.revision === 0
              ? text.imports.newPlant(report.plantId)
              : text.imports.otherPlant(report.plantId)}
          </strong>
        )}
        <span className="spring" />
        <button
          type="button"
          className="button button-main"
          disabled={!report.acceptable || isNothingNew(report) || isAccepting}
          onClick={onAccept}
        >
          {acceptLabel(report, text, format.count)}
        </button>
        <button type="button" className="button" onClick={onLeave}>
          {text.imports.leave}
        </button>
      </div>
      {problem !== null && (
        <div className="notice notice-failure" role="alert">
          <h2>{problem.title}</h2>
          <p>
            {problem.cause} {problem.remedy}
          </p>
          <button type="button" className="button" onClick={onCheckAgain}>
            {text.imports.checkAgain}
          </button>
        </div>
      )}
      <dl className="summary report-counts">
        {counts.map(({ label, value, tone }) => (
          <div key={label} className={tone === "late" ? "figure figure-late" : "figure"}>
            <dt>{label}</dt>
            <dd>{format.count(value)}</dd>
          </div>
        ))}
      </dl>
      {report.truncated && <p className="hint">{text.imports.truncated}</p>}
      <section>
        <div className="page-head">
          {report.faults.length > 0 && (
            <>
              <h2>{text.imports.faultsTitle}</h2>
              <CopyFaults report={report} />
            </>
          )}
        </div>
        {report.faults.length === 0 ? (
          <p className="all-good">
            <Icon name="check" /> {text.imports.faultsNone}
          </p>
        ) : (
          <FaultTable faults={report.faults} />
        )}
      </section>
      {report.changes.length > 0 && <ChangeList changes={report.changes} plant={plant} />}
      {report.cannotBePlanned.length > 0 && (
        <section>
          <h2>{text.imports.cannotTitle}</h2>
          <p className="hint">{text.imports.cannotHint}</p>
          <div
            className="scroller report-table"
            tabIndex={0}
            role="region"
            aria-label={text.imports.cannotTitle}
          >
            <table className="table">
              <thead>
                <tr>
                  <th scope="col">{text.imports.order}</th>
                  <th scope="col" className="number">
                    {text.imports.row}
                  </th>
                  <th scope="col">{text.imports.reasons}</th>
                </tr>
              </thead>
              <tbody>
                {report.cannotBePlanned.map((entry) => (
                  <tr key={`${entry.orderId} ${entry.row ?? ""}`}>
                    <th scope="row">{entry.orderId}</th>
                    <td className="number">{entry.row ?? ""}</td>
                    <td>
                      {entry.reasons.map((reason) => (
                        <div key={reason.text}>{text.causes.unplanned(reason, naming)}</div>
                      ))}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </section>
      )}
    </div>
  );
}

/** The file says what the plant has already: there is nothing to take over. */
function isNothingNew({ acceptable, summary }: ImportReport): boolean {
  return acceptable && summary.added + summary.changed === 0;
}

function acceptLabel(report: ImportReport, text: Text, count: (value: number) => string): string {
  if (!report.acceptable) return text.imports.acceptNone;
  if (isNothingNew(report)) return text.imports.acceptNothingNew;
  if (report.kind === "plant") return text.imports.acceptPlant;
  const good = report.summary.added + report.summary.changed + report.summary.unchanged;
  return report.summary.bad === 0
    ? text.imports.accept(count(good))
    : text.imports.acceptSome(count(good), count(report.summary.bad));
}

/** Puts the faults on the clipboard, to send them to whoever wrote the file. */
function CopyFaults({ report }: { readonly report: ImportReport }): JSX.Element {
  const { imports: text, refusals } = useText();
  const naming = useNaming();
  const [isCopied, setCopied] = useState(false);
  const copy = async (): Promise<void> => {
    const head = [text.sheet, text.row, text.column, text.value, text.problem, text.remedy];
    const rows = report.faults.map((fault) => {
      const { problem, remedy } = refusals.importFault(fault, naming);
      return [fault.sheet, `${fault.row ?? ""}`, fault.column ?? "", fault.value ?? "", problem, remedy];
    });
    await navigator.clipboard.writeText([head, ...rows].map((cells) => cells.join("\t")).join("\n"));
    setCopied(true);
  };
  return (
    <>
      <button type="button" className="button" onClick={() => void copy()}>
        {text.download}
      </button>
      <span role="status">{isCopied ? text.downloaded : ""}</span>
    </>
  );
}
