import type { FieldFault } from "@formweek/contracts";
import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useText } from "../../text/text.ts";

/** Every bad cell of a table of enquiries: where it is, what is wrong, what to do. */
export function BatchFaults({ faults }: { readonly faults: readonly FieldFault[] }): JSX.Element {
  const { batch: text } = useText();
  return (
    <section role="alert">
      <h2 className="late-words">
        <Icon name="warn" /> {text.faults}
      </h2>
      <div className="scroller" tabIndex={0} role="region" aria-label={text.faults}>
        <table className="table">
          <thead>
            <tr>
              <th scope="col">{text.faultPlace}</th>
              <th scope="col">{text.faultProblem}</th>
              <th scope="col">{text.faultRemedy}</th>
            </tr>
          </thead>
          <tbody>
            {faults.map(({ path, problem, remedy }) => (
              <tr key={`${path} ${problem}`}>
                <th scope="row">{path}</th>
                <td>{problem}</td>
                <td>{remedy}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
