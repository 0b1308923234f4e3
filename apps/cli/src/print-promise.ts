import type { Alternatives, Offer, PromiseGiven, PromisedPart, QuantityStep } from "@formweek/application";
import { localTextAt } from "@formweek/capacity-model";

/** An answer as lines for people. */
export function promiseText(given: PromiseGiven, timeZone: string): readonly string[] {
  const { enquiry, base, quantity, outcome } = given;
  const clock = clockOf(timeZone);
  const wanted = enquiry.wantedAt === null ? "as soon as can be" : `wanted by ${clock(enquiry.wantedAt)}`;
  return [
    `${grouped(enquiry.pieces)} × ${enquiry.productName} (${enquiry.productId}), ${wanted}`,
    ...quantity.steps.map((step) => `  ${stepText(step)}`),
    ...(base.unplannedOrders === 0
      ? []
      : [`  ${base.unplannedOrders} orders of the book have no place in the plan and are not looked after`]),
    ...outcomeText(outcome, given, timeZone),
  ];
}

function outcomeText(
  outcome: PromiseGiven["outcome"],
  { currency }: PromiseGiven,
  timeZone: string,
): readonly string[] {
  switch (outcome.status) {
    case "from stock":
      return [`Ready at once, from stock: ${clockOf(timeZone)(outcome.promised)}`];
    case "promised":
      return offerText(outcome.offer, currency, timeZone);
    case "impossible":
      return [
        "Not possible within the plan without making others late:",
        ...outcome.reasons.map(({ lineId, text }) => `  ${lineId ?? "every line"}: ${text}`),
      ];
  }
}

/** The other ways as lines for people. */
export function alternativesText(
  { offers, none }: Alternatives,
  { currency }: PromiseGiven,
  timeZone: string,
): readonly string[] {
  return [
    ...offers.flatMap((offer) => ["", ...offerText(offer, currency, timeZone)]),
    ...(none.length === 0
      ? []
      : ["", `No gain: ${none.map(({ kind, reason }) => `${kind} (${reason})`).join(", ")}`]),
  ];
}

const TITLES: Readonly<Record<Offer["kind"], string>> = {
  whole: "Promise",
  split: "On two lines at once",
  "first part": "A first part in time, the rest after it",
  "extra shift": "With one shift more",
  displacing: "With others later",
};

function offerText(offer: Offer, currency: string, timeZone: string): readonly string[] {
  const clock = clockOf(timeZone);
  const { price, shift, displaced } = offer;
  return [
    `${TITLES[offer.kind]}: ${clock(offer.promised)}${slackText(offer.slackSeconds)}`,
    ...(shift === null
      ? []
      : [
          `  shift to add: ${shift.date} ${shift.start}–${shift.end} on ${shift.lineIds.join(", ") || "no line"}`,
        ]),
    ...offer.parts.flatMap((part) => partText(part, clock)),
    ...displaced.map(
      ({ orderId, by, finish }) => `  ${orderId} would be ready ${clock(finish)} instead of ${clock(by)}`,
    ),
    `  ${offer.moved.length === 0 ? "no other run moves" : `${offer.moved.length} other runs move within their promises`}`,
    `  price ${price.cost.toFixed(2)} ${currency}: ${price.changeMinutes} min of change, ${price.overtimeMinutes} min of overtime more`,
  ];
}

function slackText(seconds: number | null): string {
  if (seconds === null) return "";
  const hours = Math.abs(seconds / 3600).toFixed(1);
  return seconds >= 0 ? `, ${hours} h before it is wanted` : `, ${hours} h after it is wanted`;
}

function partText(part: PromisedPart, clock: (at: string) => string): readonly string[] {
  const { rate, change } = part;
  const copy = part.mould === null ? "" : ` with ${part.mouldName} (copy ${part.mould.copy})`;
  const shift = part.shift === null ? "" : `, ${part.shift} shift`;
  return [
    `  ${part.lineName}${copy}: ${clock(part.start)} to ${clock(part.end)}${shift}, ${grouped(part.goodPieces)} good pieces`,
    change === null
      ? "    the line is set up for it"
      : `    change ${change.minutes} min, ${clock(change.start)} to ${clock(change.end)}${change.teamName === null ? "" : ` by ${change.teamName}`}`,
    rate.basis.kind === "proven"
      ? `    ${Math.round(rate.piecesPerHour)} pieces/h, proven by ${rate.basis.reports} reports`
      : `    ${Math.round(rate.piecesPerHour)} pieces/h, computed: ${(rate.basis.marginShare * 100).toFixed(1)} % of the running time is added`,
  ];
}

function stepText(step: QuantityStep): string {
  switch (step.kind) {
    case "stock":
      return `${grouped(step.pieces)} from stock`;
    case "least run":
      return `least run is ${grouped(step.pieces)}`;
    case "whole units":
      return `rounded up to ${grouped(step.units)} × ${step.unit} of ${grouped(step.unitPieces)}`;
    case "scrap":
      return `${(step.share * 100).toFixed(1)} % scrap: ${grouped(step.pieces)} to form`;
  }
}

const clockOf =
  (timeZone: string) =>
  (at: string): string =>
    localTextAt(timeZone, Date.parse(at) / 1000).replace("T", " ");

const grouped = (value: number): string => String(value).replace(/\B(?=(\d{3})+$)/g, ",");
