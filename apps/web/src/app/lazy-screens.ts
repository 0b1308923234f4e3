import { lazy, type ComponentType, type LazyExoticComponent } from "react";
import { fetchPart } from "../sync/missing-part.ts";

/** A screen that is fetched when it is first opened: the board, which most open first, does not wait for it. */
function lazyScreen<Props>(
  load: () => Promise<ComponentType<Props>>,
): LazyExoticComponent<ComponentType<Props>> {
  return lazy(async () => ({ default: await fetchPart(load) }));
}

export const ImportDesk = lazyScreen(
  async () => (await import("../features/imports/import-desk.tsx")).ImportDesk,
);
export const LoadScreen = lazyScreen(
  async () => (await import("../features/load/load-screen.tsx")).LoadScreen,
);
export const OrdersScreen = lazyScreen(
  async () => (await import("../features/orders/orders-screen.tsx")).OrdersScreen,
);
export const PlansScreen = lazyScreen(
  async () => (await import("../features/versions/plans-screen.tsx")).PlansScreen,
);
export const PlantScreen = lazyScreen(
  async () => (await import("../features/plant/plant-screen.tsx")).PlantScreen,
);
export const PromiseScreen = lazyScreen(
  async () => (await import("../features/promise/promise-screen.tsx")).PromiseScreen,
);
export const SheetsScreen = lazyScreen(
  async () => (await import("../features/sheets/sheets-screen.tsx")).SheetsScreen,
);
export const WhatIfScreen = lazyScreen(
  async () => (await import("../features/what-if/what-if-screen.tsx")).WhatIfScreen,
);
