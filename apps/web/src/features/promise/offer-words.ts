import type { Offer, PromisedPart, PromiseQuantity, PromisedRate } from "@formweek/contracts";
import type { Format } from "../../format/format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import type { Text } from "../../text/text.ts";

export interface Words {
  readonly text: Text;
  readonly format: Format;
}

/** Shorter pauses and reserves are not worth a sentence. */
const leastToldSeconds = 60;

/** By when something is wanted: the midnight after a day is that day's end. */
export function wantedWords(iso: string, { text, format }: Words): string {
  const at = secondsOf(iso);
  return format.clock(at) === "00:00" ? text.promise.endOf(format.day(at - 1)) : format.instant(at);
}

/** How pieces ordered become pieces to form, in sentences. */
export function quantityWords({ steps }: PromiseQuantity, { text, format }: Words): readonly string[] {
  const words = text.promise.steps;
  return steps.map((step) => {
    switch (step.kind) {
      case "stock":
        return words.stock(format.count(step.pieces));
      case "least run":
        return words.leastRun(format.count(step.pieces));
      case "whole units":
        return words.units(
          format.count(step.units),
          text.promise.units[step.unit],
          format.count(step.unitPieces),
        );
      case "scrap":
        return words.scrap(format.percentFine(step.share), format.count(step.pieces));
    }
  });
}

/** How an offer comes about, in sentences by time. */
export function offerSteps({ parts, moved, displaced, shift }: Offer, words: Words): readonly string[] {
  const { steps } = words.text.promise;
  const movedWords = displaced.length === 0 ? steps.moved : steps.movedOthers;
  return [
    ...parts.flatMap((part) => {
      // the server's name of a shift that is not there yet is in English
      const isAdded = shift !== null && part.shift === shift.name;
      return partSteps(isAdded ? { ...part, shift: words.text.hours.shiftName } : part, words);
    }),
    ...(moved.length === 0 ? [] : [movedWords(moved.length)]),
  ];
}

function partSteps(part: PromisedPart, { text, format }: Words): readonly string[] {
  const { steps } = text.promise;
  const { change, lineName } = part;
  const at = (iso: string): string => format.instant(secondsOf(iso));
  const rest = secondsOf(part.finish) - secondsOf(part.end);
  const margin = secondsOf(part.promised) - secondsOf(part.finish);
  return [
    change === null
      ? steps.noChange(lineName)
      : steps.change(lineName, format.span(change.minutes * 60), change.teamName, at(change.start)),
    steps.run({
      pieces: format.count(part.pieces),
      line: lineName,
      mould: part.mouldName,
      start: at(part.start),
      end: at(part.end),
      shift: part.shift,
    }),
    ...(rest < leastToldSeconds ? [] : [steps.rests(format.span(rest), at(part.finish))]),
    ...(margin < leastToldSeconds ? [] : [steps.margin(format.span(margin))]),
  ];
}

/** What a rate rests on. */
export function rateWords({ piecesPerHour, basis }: PromisedRate, { text, format }: Words): string {
  const { promise } = text;
  const perHour = text.units.perHour(format.count(piecesPerHour));
  if (basis.kind === "proven") return promise.proven(perHour, basis.reports);
  const share = format.percentFine(basis.marginShare);
  const added =
    basis.from.kind === "rule"
      ? promise.marginRule(share)
      : basis.marginShare > 0
        ? promise.marginPlant(share, format.count(basis.from.rates))
        : promise.noMargin(format.count(basis.from.rates));
  return `${promise.computed(perHour)} ${added}`;
}

/** Whether an offer meets the day that is wanted. */
export function verdictOf(slackSeconds: number | null, { text, format }: Words): Verdict {
  if (slackSeconds === null) return { tone: "plain", words: text.promise.earliest };
  if (slackSeconds < 0) return { tone: "late", words: text.promise.tooLate(format.span(slackSeconds)) };
  const isClose = slackSeconds < leastToldSeconds;
  return {
    tone: "ok",
    words: isClose ? text.promise.justInTime : text.promise.inTime(format.span(slackSeconds)),
  };
}

export interface Verdict {
  readonly tone: "ok" | "late" | "plain";
  readonly words: string;
}
