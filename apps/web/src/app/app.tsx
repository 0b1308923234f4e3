import { Suspense, useMemo, useState, type JSX, type ReactNode } from "react";
import { Link, Route, Switch, useLocation } from "wouter";
import type { PlantListResponse } from "@formweek/contracts";
import { CrashGuard } from "../components/crash-guard.tsx";
import { EmptyNotice, FailureNotice, LoadingNotice } from "../components/notice.tsx";
import { formatFor } from "../format/format.ts";
import { namingFor, planNames } from "../format/plan-names.ts";
import { FormatProvider, useFormat } from "../format/use-format.ts";
import { NamingProvider } from "../format/use-naming.ts";
import { keepPlantId, keptPlantId } from "../sync/plant-choice.ts";
import { usePlantEvents } from "../sync/events.ts";
import { usePlant, usePlants } from "../sync/queries.ts";
import { useLanguage, useText } from "../text/text.ts";
import {
  BoardPage,
  LoadPage,
  OrdersPage,
  PlansPage,
  PlantPage,
  PromisePage,
  SheetsPage,
  WhatIfPage,
} from "./pages.tsx";
import { Shell } from "./shell.tsx";

/** The app: finds the plants, opens one, and shows the page that the address names. */
export function App(): JSX.Element {
  const { app: text } = useText();
  const plants = usePlants();
  if (plants.data === undefined) {
    return plants.error === null ? (
      <LoadingNotice />
    ) : (
      <FailureNotice cause={plants.error} onRetry={() => void plants.refetch()} />
    );
  }
  if (plants.data.length === 0) {
    return (
      <EmptyNotice title={text.noPlant}>
        <p>{text.noPlantHint}</p>
      </EmptyNotice>
    );
  }
  return <OpenPlant plants={plants.data} />;
}

function OpenPlant({ plants }: { readonly plants: PlantListResponse }): JSX.Element | null {
  const { locale, text } = useLanguage();
  const [place] = useLocation();
  const [chosen, setChosen] = useState(keptPlantId);
  const plant = plants.find((known) => known.id === chosen) ?? plants[0];
  const connection = usePlantEvents(plant?.id ?? null);
  const format = useMemo(
    () =>
      formatFor({
        locale,
        timeZone: plant?.timeZone ?? "UTC",
        currency: plant?.currency ?? "EUR",
        text,
      }),
    [locale, plant?.timeZone, plant?.currency, text],
  );
  if (plant === undefined) return null;
  const choose = (plantId: string): void => {
    keepPlantId(plantId);
    setChosen(plantId);
  };
  return (
    <FormatProvider value={format}>
      <NamedPlant plantId={plant.id}>
        <Shell plants={plants} plantId={plant.id} onPlant={choose} connection={connection}>
          <CrashGuard place={place}>
            <Suspense fallback={<LoadingNotice />}>
              <Switch>
                <Route path="/">
                  <BoardPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/sheets">
                  <SheetsPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/plans">
                  <PlansPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/load">
                  <LoadPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/what-if">
                  <WhatIfPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/promise/:section?">
                  {({ section }) => <PromisePage key={plant.id} plantId={plant.id} section={section} />}
                </Route>
                <Route path="/orders">
                  <OrdersPage key={plant.id} plantId={plant.id} />
                </Route>
                <Route path="/plant/:section?">
                  {({ section }) => (
                    <PlantPage key={plant.id} plantId={plant.id} onPlant={choose} section={section} />
                  )}
                </Route>
                <Route>
                  <EmptyNotice title={text.app.notFound}>
                    <Link href="/" className="button button-main">
                      {text.app.notFoundHint}
                    </Link>
                  </EmptyNotice>
                </Route>
              </Switch>
            </Suspense>
          </CrashGuard>
        </Shell>
      </NamedPlant>
    </FormatProvider>
  );
}

interface NamedPlantProps {
  readonly plantId: string;
  readonly children: ReactNode;
}

/** Gives all within it the names of the plant's records; their ids until those are known. */
function NamedPlant({ plantId, children }: NamedPlantProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const plant = usePlant(plantId).data?.plant;
  const naming = useMemo(() => namingFor(planNames(plant, text), format), [plant, text, format]);
  return <NamingProvider value={naming}>{children}</NamingProvider>;
}
