import { lazy, Suspense, type ComponentProps, type JSX } from "react";
import { CrashGuard } from "../../components/crash-guard.tsx";
import { fetchPart } from "../../sync/missing-part.ts";

const LateDetails = lazy(async () => ({
  default: (await fetchPart(() => import("./details-panel.tsx"))).DetailsPanel,
}));
const LateTable = lazy(async () => ({
  default: (await fetchPart(() => import("./plan-table.tsx"))).PlanTable,
}));

/**
 * The details of what is selected, fetched once the board is drawn: nothing is selected before. Where the server goes before they
 * are here, they alone are missing and the board stays.
 */
export function DetailsPanel(props: ComponentProps<typeof LateDetails>): JSX.Element {
  return (
    <CrashGuard>
      <Suspense>
        <LateDetails {...props} />
      </Suspense>
    </CrashGuard>
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
