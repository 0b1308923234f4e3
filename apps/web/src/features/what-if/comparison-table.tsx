import type { JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import type { ComparedColumn, Comparison, WorkedOut } from "../../kernels/scenario-rows.ts";
import { useText } from "../../text/text.ts";
import { FigureDifference, sayFigure } from "./figure-words.tsx";

interface ComparisonTableProps {
  readonly comparison: Comparison;
  readonly onAdopt: (scenario: WorkedOut) => void;
}

/** Plans side by side, a bar in each cell so that the eye compares along a row. */
export function ComparisonTable({ comparison, onAdopt }: ComparisonTableProps): JSX.Element {
  const {
    whatIf: { compare: text },
  } = useText();
  const format = useFormat();
  const { columns, rows } = comparison;
  return (
    <div className="scroller what-if-scroller" tabIndex={0} role="group" aria-label={text.title}>
      <table className="table what-if-table">
        <caption className="unseen">{text.title}</caption>
        <thead>
          <tr>
            <th scope="col">{text.figure}</th>
            {columns.map((column) => (
              <th key={keyOf(column)} scope="col">
                <ColumnHead column={column} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, cells }) => (
            <tr key={name}>
              <th scope="row">{text.rows[name]}</th>
              {columns.map((column, place) => {
                const cell = cells[place];
                if (cell === undefined) return null;
                return (
                  <td key={keyOf(column)}>
                    <span className="figure-value">{sayFigure(name, cell.value, format)}</span>
                    <span className="figure-bar" aria-hidden="true">
                      <span
                        className={`figure-fill fill-${column.kind}`}
                        style={{ width: percent(cell.share) }}
                      />
                    </span>
                    {cell.by !== null && <FigureDifference name={name} by={cell.by} />}
                  </td>
                );
              })}
            </tr>
          ))}
          {columns.some(({ scenario }) => scenario !== null && scenario.adopted === null) && (
            <tr className="adopt-row">
              <td />
              {columns.map((column) => (
                <td key={keyOf(column)}>
                  <AdoptButton scenario={column.scenario} onAdopt={onAdopt} />
                </td>
              ))}
            </tr>
          )}
        </tbody>
      </table>
    </div>
  );
}

const keyOf = ({ kind, scenario }: ComparedColumn): string => scenario?.id ?? kind;

const percent = (share: number): string => `${Math.round(share * 1000) / 10}%`;

function ColumnHead({ column }: { readonly column: ComparedColumn }): JSX.Element {
  const {
    whatIf: { compare: text, states },
  } = useText();
  const { kind, scenario } = column;
  if (scenario === null)
    return kind === "standing" ? (
      <>{text.standing}</>
    ) : (
      <>
        {text.without} <small>{text.withoutHint}</small>
      </>
    );
  return (
    <>
      {scenario.name}{" "}
      {scenario.adopted !== null ? (
        <small>{states.adopted}</small>
      ) : (
        !scenario.outcome.isCurrent && <small className="worse">{text.outdated}</small>
      )}
    </>
  );
}

interface AdoptButtonProps {
  readonly scenario: WorkedOut | null;
  readonly onAdopt: (scenario: WorkedOut) => void;
}

function AdoptButton({ scenario, onAdopt }: AdoptButtonProps): JSX.Element | null {
  const {
    whatIf: { compare: text },
  } = useText();
  if (scenario === null || scenario.adopted !== null) return null;
  return (
    <button
      type="button"
      className="button"
      aria-label={text.adoptOf(scenario.name)}
      onClick={() => onAdopt(scenario)}
    >
      {text.adopt}
    </button>
  );
}
