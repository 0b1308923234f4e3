import { formingRate } from "@formweek/capacity-model";
import type { ProblemEdit } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";

/** Refusal by the fit check where nothing but the approval is missing. */
const APPROVAL = "approval";

/**
 * Lines that an order could run on if its mould were approved there: the fit check has nothing else against them, the
 * set-up is one that the plant knows, and the machine cycle gives a rate.
 */
export function approvalOffers(
  { plant, problem, demands, states }: Assembled,
  orderId: string,
): ProblemEdit[] {
  const job = problem.jobs.find((each) => each.orderId === orderId);
  const product = plant.products.find(
    (each) => each.id === demands.find((demand) => demand.order.id === orderId)?.order.productId,
  );
  const sheet = plant.sheets.find((each) => each.id === product?.sheetId);
  const polymer = plant.polymers.find((each) => each.name === sheet?.polymer);
  if (job === undefined || product === undefined || sheet === undefined || polymer === undefined) return [];
  return product.moulds.flatMap(({ mouldId }) => {
    const mould = plant.moulds.find((each) => each.id === mouldId);
    const known = job.options.find(({ setupId }) => {
      const state = states[problem.setups.findIndex((setup) => setup.id === setupId)];
      return state?.mould?.id === mouldId;
    });
    if (mould === undefined || known === undefined) return [];
    return plant.lines.flatMap((line): ProblemEdit[] => {
      const against = job.refusals.filter((each) => each.lineId === line.id && each.mouldId === mouldId);
      if (against.length === 0 || against.some(({ code }) => code !== APPROVAL)) return [];
      const rate = formingRate({ line, mould, product, sheet, polymer, provenRates: plant.provenRates });
      if (rate.kind === "impossible") return [];
      const secondsPerPiece = rate.cycleSeconds / (mould.cavitiesAlong * mould.cavitiesAcross);
      const option = { lineId: line.id, setupId: known.setupId, secondsPerPiece };
      return [{ kind: "another line", orderId, option }];
    });
  });
}
