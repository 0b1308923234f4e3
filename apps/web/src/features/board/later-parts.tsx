import { lazy, Suspense, type ComponentProps, type JSX } from "react";

const LateDetails = lazy(async () => ({ default: (await import("./details-panel.tsx")).DetailsPanel }));
const LateTable = lazy(async () => ({ default: (await import("./plan-table.tsx")).PlanTable }));

/** The details of what is selected, fetched once the board is drawn: nothing is selected before. */
export function DetailsPanel(props: ComponentProps<typeof LateDetails>): JSX.Element {
  return (
    <Suspense>
      <LateDetails {...props} />
    </Suspense>
  );
}

/** The plan as a table, fetched when it is asked for. */
export function PlanTable(props: ComponentProps<typeof LateTable>): JSX.Element {
  return (
    <Suspense>
      <LateTable {...props} />
    </Suspense>
  );
}
