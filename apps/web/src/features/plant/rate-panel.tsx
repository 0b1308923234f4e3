import { useState, type JSX } from "react";
import type { Plant } from "@formweek/capacity-model";
import type { RateEntry } from "@formweek/contracts";
import { Facts } from "../../components/facts.tsx";
import { Icon } from "../../components/icon.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import type { RateCell } from "../../kernels/rate-matrix.ts";
import { useText } from "../../text/text.ts";
import { CyclePicture } from "./cycle-picture.tsx";

interface RatePanelProps {
  readonly cell: RateCell;
  readonly plant: Plant;
  readonly onClose: () => void;
}

/** One mould on one line: rate, cycle and limit of a product, or the reasons why it does not fit. */
export function RatePanel({ cell, plant, onClose }: RatePanelProps): JSX.Element | null {
  const text = useText();
  const [at, setAt] = useState(0);
  const entry = cell.entries[at] ?? cell.entries[0];
  if (entry === undefined) return null;
  const nameOf = (records: readonly { readonly id: string; readonly name: string }[], id: string): string =>
    records.find((record) => record.id === id)?.name ?? id;
  return (
    <aside className="details rate-panel" aria-label={text.plant.sections.rates}>
      <button
        type="button"
        className="button button-icon details-close"
        aria-label={text.plant.rates.close}
        onClick={onClose}
      >
        <Icon name="close" />
      </button>
      <h2>{nameOf(plant.moulds, cell.mouldId)}</h2>
      <p className="details-lead">{nameOf(plant.lines, cell.lineId)}</p>
      <label className="rate-product">
        <span className="hint">{text.plant.rates.product}</span>
        <select className="select" value={at} onChange={(event) => setAt(Number(event.target.value))}>
          {cell.entries.map((each, place) => (
            <option key={each.productId} value={place}>
              {nameOf(plant.products, each.productId)}
            </option>
          ))}
        </select>
      </label>
      {entry.rate === null ? <Refusals entry={entry} /> : <RateFigures rate={entry.rate} />}
    </aside>
  );
}

function RateFigures({ rate }: { readonly rate: NonNullable<RateEntry["rate"]> }): JSX.Element {
  const { plant: text, units, causes } = useText();
  const format = useFormat();
  const naming = useNaming();
  const { limit } = rate;
  return (
    <>
      <p className="rate-lead">
        <strong>{units.cyclesPerMin(format.decimal(rate.cyclesPerMin, 1))}</strong>
        <span className="hint">{rate.proven ? text.rates.proven : text.rates.computed}</span>
      </p>
      <Facts
        facts={[
          { name: text.rates.pieces, value: units.perHour(format.count(rate.piecesPerHour)) },
          { name: text.rates.sheet, value: units.kgPerHour(format.decimal(rate.sheetKgPerHour, 1)) },
          { name: text.rates.skeleton, value: format.percent(rate.skeletonShare) },
        ]}
      />
      <CyclePicture rate={rate} />
      <h3>
        {text.rates.limitedBy}: {text.rates.limits[limit.name] ?? limit.name}
      </h3>
      <p>{causes.limit(rate, naming)}</p>
      {limit.byShare !== null && limit.byShare > 0 && (
        <p className="hint">{text.rates.byShare(format.percentFine(limit.byShare))}</p>
      )}
    </>
  );
}

function Refusals({ entry }: { readonly entry: RateEntry }): JSX.Element {
  const { plant: text, causes } = useText();
  const format = useFormat();
  const naming = useNaming();
  return (
    <>
      <h3>{text.rates.refused}</h3>
      <ul className="refusals">
        {entry.refusals.map((refusal) => (
          <li key={refusal.code}>
            {causes.misfit(refusal, naming)}
            {Object.keys(refusal.numbers).length > 0 && (
              <Facts
                facts={Object.entries(refusal.numbers).map(([name, value]) => ({
                  name: figureName(name, text.rates.figures),
                  value: `${format.decimal(value, value % 1 === 0 ? 0 : 1)} ${figureUnit(name)}`,
                }))}
              />
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

const unitOfSuffix: Readonly<Record<string, string>> = {
  Mm: "mm",
  Kn: "kN",
  Bar: "bar",
  Kg: "kg",
  Seconds: "s",
  Cm2: "cm²",
};

function suffixOf(name: string): string | undefined {
  return Object.keys(unitOfSuffix).find((suffix) => name.endsWith(suffix));
}

function figureUnit(name: string): string {
  return unitOfSuffix[suffixOf(name) ?? ""] ?? "";
}

function figureName(name: string, names: Readonly<Record<string, string>>): string {
  const bare = name.slice(0, name.length - (suffixOf(name)?.length ?? 0));
  return names[bare] ?? bare;
}
