import type { JSX, ReactNode } from "react";
import { Link } from "wouter";
import type { PlanResponse } from "@formweek/contracts";
import { FailureNotice, LoadingNotice } from "../components/notice.tsx";
import { BoardScreen } from "../features/board/board-screen.tsx";
import { BookWorkProvider, useOpenBook } from "../features/orders/use-book-edits.ts";
import { LookState } from "../features/solve/look-state.tsx";
import { SolveBar } from "../features/solve/solve-bar.tsx";
import { planShown, useLook } from "../features/solve/use-look.ts";
import { PlanState } from "../features/versions/plan-state.tsx";
import { secondsOf } from "../kernels/board-plan.ts";
import { useHolds } from "../sync/holds.ts";
import { usePins } from "../sync/pins.ts";
import { useLatestPlan, useOrders, usePlant, useRates } from "../sync/queries.ts";
import { usePublications } from "../sync/versions.ts";
import { useWorkingPlan } from "../sync/working-plan.ts";
import { useText } from "../text/text.ts";
import {
  ImportDesk,
  LoadScreen,
  OrdersScreen,
  PlansScreen,
  PlantScreen,
  PromiseScreen,
  SheetsScreen,
  WhatIfScreen,
} from "./lazy-screens.ts";

/** What a page needs of a query before it can show its content. */
interface Answer {
  readonly error: Error | null;
  readonly isPending: boolean;
  readonly refetch: () => unknown;
}

/** The first trouble or wait among the answers that a page stands on; null when all are there. */
function notYet(answers: readonly Answer[]): ReactNode {
  const failed = answers.find((answer) => answer.error !== null && answer.isPending === false);
  if (failed !== undefined)
    return <FailureNotice cause={failed.error} onRetry={() => void failed.refetch()} />;
  return answers.some((answer) => answer.isPending) ? <LoadingNotice /> : null;
}

/** A query with data keeps its page, also when asking again failed. */
function standing(answer: Answer & { readonly data: unknown }): Answer {
  return answer.data === undefined ? answer : { ...answer, error: null, isPending: false };
}

export function BoardPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const plan = useLatestPlan(plantId);
  const plant = usePlant(plantId);
  const orders = useOrders(plantId);
  const pins = usePins(plantId);
  const holds = useHolds(plantId);
  const rates = useRates(plantId);
  const published = usePublications(plantId).data?.[0];
  const look = useLook(plantId, plan.isFetching);
  const wait = notYet([standing(plan)]);
  if (wait !== null || plan.data === undefined) return <>{wait}</>;
  const count = orders.data?.orders.length ?? 0;
  return (
    <BoardScreen
      plan={planShown(plan.data, look)}
      look={look}
      plant={plant.data?.plant}
      pins={pins.data}
      holds={holds.data}
      rates={rates.data}
      orders={count}
      frozenUntil={
        published === undefined || published.frozenUntil === null ? null : secondsOf(published.frozenUntil)
      }
      hasOtherInputs={orders.data?.planInputs === "changed"}
      newOrders={orders.data?.orders.filter((order) => order.state === "not planned yet").length ?? 0}
      versions={
        look.plan !== null ? (
          <LookState plan={look.plan} />
        ) : plan.data === null ? null : (
          <BoardPlanState plan={plan.data} />
        )
      }
      solve={
        <SolveBar
          plantId={plantId}
          document={plan.data?.document ?? null}
          hasOrders={orders.data === undefined || count > 0}
          look={look}
        />
      }
    />
  );
}

function BoardPlanState({ plan }: { readonly plan: PlanResponse }): JSX.Element {
  const { versions: text } = useText();
  return (
    <PlanState plan={plan}>
      <Link href="/plans" className="button">
        {text.toHistory}
      </Link>
    </PlanState>
  );
}

export function PlansPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const plan = useLatestPlan(plantId);
  const working = useWorkingPlan(plantId);
  const publications = usePublications(plantId);
  const wait = notYet([standing(plan), standing(working), standing(publications)]);
  if (wait !== null || plan.data === undefined || working.data === undefined) return <>{wait}</>;
  return <PlansScreen plan={plan.data} working={working.data} publications={publications.data ?? []} />;
}

export function LoadPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const plant = usePlant(plantId);
  const wait = notYet([standing(plant)]);
  if (wait !== null || plant.data === undefined) return <>{wait}</>;
  return <LoadScreen plant={plant.data.plant} />;
}

export function WhatIfPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const plan = useLatestPlan(plantId);
  const plant = usePlant(plantId);
  const orders = useOrders(plantId);
  const wait = notYet([standing(plan), standing(plant), standing(orders)]);
  if (wait !== null || plan.data === undefined || plant.data === undefined || orders.data === undefined)
    return <>{wait}</>;
  return <WhatIfScreen plan={plan.data} plant={plant.data.plant} orders={orders.data.orders} />;
}

export function SheetsPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const plan = useLatestPlan(plantId);
  const plant = usePlant(plantId);
  const wait = notYet([standing(plan), standing(plant)]);
  if (wait !== null || plan.data === undefined) return <>{wait}</>;
  return <SheetsScreen plan={plan.data} plant={plant.data?.plant} />;
}

export function PromisePage({
  plantId,
  section,
}: {
  readonly plantId: string;
  readonly section: string | undefined;
}): JSX.Element {
  const plan = useLatestPlan(plantId);
  const plant = usePlant(plantId);
  const wait = notYet([standing(plan), standing(plant)]);
  if (wait !== null || plan.data === undefined || plant.data === undefined) return <>{wait}</>;
  return <PromiseScreen plan={plan.data} plant={plant.data.plant} section={section} />;
}

export function OrdersPage({ plantId }: { readonly plantId: string }): JSX.Element {
  const text = useText();
  const orders = useOrders(plantId);
  const plant = usePlant(plantId);
  const wait = notYet([standing(orders), standing(plant)]);
  const work = useOpenBook(plantId, plant.data?.plant.timeZone ?? "UTC");
  return (
    <BookWorkProvider value={work}>
      <ImportDesk
        plantId={plantId}
        kind="orders"
        plant={plant.data?.plant}
        onAccepted={({ changes, summary }, { step }) => {
          const isWhole = changes.length === summary.added + summary.changed;
          work.tookOver(isWhole ? changes : [], step);
        }}
        next={
          <Link href="/" className="button button-main">
            {text.imports.planNow}
          </Link>
        }
      >
        {(buttons) =>
          wait ??
          (orders.data === undefined || plant.data === undefined ? null : (
            <OrdersScreen plant={plant.data.plant} book={orders.data} importButtons={buttons} />
          ))
        }
      </ImportDesk>
    </BookWorkProvider>
  );
}

interface PlantPageProps {
  readonly plantId: string;
  /** Opens another plant. */
  readonly onPlant: (plantId: string) => void;
  readonly section: string | undefined;
}

export function PlantPage({ plantId, onPlant, section }: PlantPageProps): JSX.Element {
  const plant = usePlant(plantId);
  const wait = notYet([standing(plant)]);
  return (
    <ImportDesk
      plantId={plantId}
      kind="plant"
      onAccepted={({ plantId: changedId }) => onPlant(changedId)}
      next={null}
    >
      {(buttons) =>
        wait ??
        (plant.data === undefined ? null : (
          <PlantScreen plantId={plantId} plant={plant.data.plant} section={section} importButtons={buttons} />
        ))
      }
    </ImportDesk>
  );
}
