import { useVirtualizer } from "@tanstack/react-virtual";
import { useMemo, useRef, type JSX } from "react";
import type { ImportReport } from "@formweek/contracts";
import { Icon } from "../../components/icon.tsx";
import { SpacerRow } from "../../components/spacer-row.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { useText } from "../../text/text.ts";

type Fault = ImportReport["faults"][number];

const usualRowPx = 58;

/** Every bad or doubtful cell: where it is, what stands there, what is wrong, what to do. */
export function FaultTable({ faults: given }: { readonly faults: readonly Fault[] }): JSX.Element {
  const faults = useMemo(() => given.toSorted(byPlace), [given]);
  const { imports: text, refusals } = useText();
  const naming = useNaming();
  const scrollRef = useRef<HTMLDivElement>(null);
  const virtual = useVirtualizer({
    count: faults.length,
    getScrollElement: () => scrollRef.current,
    estimateSize: () => usualRowPx,
    overscan: 10,
  });
  const items = virtual.getVirtualItems();
  const above = items[0]?.start ?? 0;
  const below = virtual.getTotalSize() - (items.at(-1)?.end ?? 0);
  return (
    <div
      className="scroller report-table"
      ref={scrollRef}
      tabIndex={0}
      role="region"
      aria-label={text.faultsTitle}
    >
      <table className="table" aria-rowcount={faults.length + 1}>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">{text.severity}</th>
            <th scope="col">{text.sheet}</th>
            <th scope="col" className="number">
              {text.row}
            </th>
            <th scope="col">{text.column}</th>
            <th scope="col">{text.value}</th>
            <th scope="col">{text.problem}</th>
            <th scope="col">{text.remedy}</th>
          </tr>
        </thead>
        <tbody>
          <SpacerRow height={above} />
          {items.map((item) => {
            const fault = faults[item.index];
            if (fault === undefined) return null;
            const said = refusals.importFault(fault, naming);
            return (
              <tr
                key={item.index}
                ref={virtual.measureElement}
                data-index={item.index}
                aria-rowindex={item.index + 2}
              >
                <td>
                  <span className={fault.severity === "error" ? "badge badge-late" : "badge badge-warn"}>
                    <Icon name="warn" /> {fault.severity === "error" ? text.error : text.warning}
                  </span>
                </td>
                <td>{fault.sheet}</td>
                <td className="number">{fault.row ?? text.wholeSheet}</td>
                <td>{fault.column ?? text.wholeRow}</td>
                <td className="value">{fault.value ?? ""}</td>
                <td>{said.problem}</td>
                <td>{said.remedy}</td>
              </tr>
            );
          })}
          <SpacerRow height={below} />
        </tbody>
      </table>
    </div>
  );
}

/** Sheet by sheet from the top; what concerns a whole sheet comes first. */
function byPlace(a: Fault, b: Fault): number {
  if (a.sheet !== b.sheet) return a.sheet < b.sheet ? -1 : 1;
  return (a.row ?? 0) - (b.row ?? 0);
}
