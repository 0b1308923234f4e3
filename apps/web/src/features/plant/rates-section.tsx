import { useCallback, useMemo, useRef, useState, type JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import { FindBox } from "../../components/find-box.tsx";
import { EmptyNotice, FailureNotice, LoadingNotice } from "../../components/notice.tsx";
import type { Format } from "../../format/format.ts";
import { useFormat } from "../../format/use-format.ts";
import { useEscape } from "../../interactions/use-escape.ts";
import { cellKey, rateMatrix, type RateCell } from "../../kernels/rate-matrix.ts";
import { useRates } from "../../sync/queries.ts";
import { useText, type Text } from "../../text/text.ts";
import { RatePanel } from "./rate-panel.tsx";

interface RatesSectionProps {
  readonly plantId: string;
  readonly plant: Plant;
}

/** Moulds against lines: how fast each runs where, and what refuses it where it does not. */
export function RatesSection({ plantId, plant }: RatesSectionProps): JSX.Element {
  const text = useText();
  const rates = useRates(plantId);
  const cells = useMemo(() => (rates.data === undefined ? null : rateMatrix(rates.data)), [rates.data]);
  const [openKey, setOpenKey] = useState<string | null>(null);
  const [sought, setSought] = useState("");
  const book = useRef<HTMLDivElement>(null);
  /** The focus goes back to the cell that was opened. */
  const close = useCallback((): void => {
    book.current?.querySelector<HTMLElement>('.cell[aria-expanded="true"]')?.focus();
    setOpenKey(null);
  }, []);
  useEscape(openKey !== null, close);
  if (rates.error !== null)
    return <FailureNotice isInner cause={rates.error} onRetry={() => void rates.refetch()} />;
  if (cells === null) return <LoadingNotice />;
  if (cells.size === 0) return <EmptyNotice isInner title={text.plant.rates.none} />;
  const word = sought.trim().toLowerCase();
  const moulds = plant.moulds.filter((mould) => `${mould.name} ${mould.family}`.toLowerCase().includes(word));
  const open = openKey === null ? undefined : cells.get(openKey);
  return (
    <div className="record-table">
      <div className="page-head">
        <FindBox label={text.plant.find} hint={text.plant.rates.mould} value={sought} onChange={setSought} />
        <p className="hint">{text.plant.rates.hint}</p>
      </div>
      <div ref={book} className="book">
        <div className="scroller" tabIndex={0} role="region" aria-label={text.plant.rates.matrix}>
          <table className="table matrix">
            <caption className="unseen">{text.plant.rates.matrix}</caption>
            <thead>
              <tr>
                <th scope="col">{text.plant.rates.mould}</th>
                {plant.lines.map((line) => (
                  <th key={line.id} scope="col" className="number">
                    {line.name}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {moulds.map((mould) => (
                <tr key={mould.id}>
                  <th scope="row">{mould.name}</th>
                  {plant.lines.map((line) => {
                    const key = cellKey(mould.id, line.id);
                    return (
                      <td key={line.id} className="number">
                        <MatrixCell
                          cell={cells.get(key)}
                          name={`${mould.name}, ${line.name}`}
                          isOpen={key === openKey}
                          onOpen={() => setOpenKey(key === openKey ? null : key)}
                        />
                      </td>
                    );
                  })}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
        {open !== undefined && <RatePanel key={openKey} cell={open} plant={plant} onClose={close} />}
      </div>
    </div>
  );
}

interface MatrixCellProps {
  readonly cell: RateCell | undefined;
  readonly name: string;
  readonly isOpen: boolean;
  readonly onOpen: () => void;
}

function MatrixCell({ cell, name, isOpen, onOpen }: MatrixCellProps): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  if (cell === undefined) return null;
  const { shown, spoken } = cellWords(cell, text, format);
  return (
    <button
      type="button"
      className={cell.range === null ? "cell cell-refused" : "cell"}
      aria-label={`${name}: ${spoken}`}
      aria-expanded={isOpen}
      onClick={onOpen}
    >
      {shown}
      {cell.isProven && <small>{text.plant.rates.provenMark}</small>}
    </button>
  );
}

function cellWords(
  cell: RateCell,
  text: Text,
  format: Format,
): { readonly shown: string; readonly spoken: string } {
  if (cell.range === null) return { shown: "–", spoken: text.plant.rates.doesNotFit };
  const [least, greatest] = [format.decimal(cell.range.least, 1), format.decimal(cell.range.greatest, 1)];
  const shown = least === greatest ? least : `${least}–${greatest}`;
  const proven = cell.isProven ? `, ${text.plant.rates.proven}` : "";
  return { shown, spoken: `${text.units.cyclesPerMin(shown)}${proven}` };
}
