import { POLYMER_DEFAULTS, Plant } from "@formweek/capacity-model";
import type { Order } from "@formweek/capacity-model";
import { ordersOfWeek } from "../generator/order-week.ts";
import { demoChangeoverRules } from "./changeover-rules.ts";
import { demoCalendars, demoPools, demoTeams, demoTrolleys } from "./crews.ts";
import { demoBreakdown, demoLines } from "./lines.ts";
import { demoMoulds } from "./moulds.ts";
import { demoProducts } from "./products.ts";
import { demoSheets } from "./sheets.ts";

/** Three order weeks of the demo: calm fits with ease, full fills the lines, breakdown is the full week with a line lost for two days. */
export type DemoWeek = "calm" | "full" | "breakdown";

export const DEMO_WEEKS: readonly DemoWeek[] = ["calm", "full", "breakdown"];

/** The invented plant that everything is shown on; in the breakdown week line 4 stands for two days. */
export function demoPlant(week: DemoWeek): Plant {
  return Plant.parse({
    id: "ellerwade",
    name: "Ellerwade Packaging",
    timeZone: "Europe/Berlin",
    currency: "EUR",
    firstWeekday: 1,
    planFrom: "2026-11-30T06:00",
    horizonWeeks: 6,
    calendars: demoCalendars,
    lines: demoLines,
    lineClosures: week === "breakdown" ? demoBreakdown : [],
    moulds: demoMoulds,
    polymers: Object.values(POLYMER_DEFAULTS),
    sheets: demoSheets,
    products: demoProducts,
    provenRates: demoProducts.slice(0, 12).flatMap((product) => [
      {
        lineId: "L1",
        mouldId: product.moulds[0]?.mouldId,
        productId: product.id,
        cyclesPerMin: 21.5,
        reports: 9,
        spreadCyclesPerMin: 0.6,
      },
    ]),
    setterTeams: demoTeams,
    trolleys: demoTrolleys,
    operatorPools: demoPools,
    changeoverRules: demoChangeoverRules,
    prices: {
      latePerWeightHour: 40,
      perLateOrderWeight: 60,
      changePerMachineHour: 45,
      changePerTeamHour: 60,
      scrapPerKg: 0.9,
      unplannedPerWeight: 40_000,
    },
  });
}

/** The week's orders, drawn once and for ever by their seed. */
export function demoOrders(week: DemoWeek): readonly Order[] {
  const calm = week === "calm";
  return ordersOfWeek(demoPlant("calm"), {
    seed: calm ? 11 : 12,
    count: null,
    loadShare: calm ? 0.55 : 0.86,
    days: 7,
    runHours: calm ? [4, 12] : [3, 13],
    slackHours: calm ? [12, 60] : [2, 30],
    firstNumber: calm ? 30_101 : 30_401,
  });
}
