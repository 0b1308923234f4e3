import { whyNotInPlan } from "../explain/why-unplanned.ts";
import type { UnplannedReason } from "../plan/plan.ts";
import { NEVER } from "../problem/calendar.ts";
import type { Decoder } from "../timing/decoder.ts";
import { allowedPositions, insertOption, removeAt, type Sequences } from "../timing/sequences.ts";
import type { PromiseRefusal } from "./promise.ts";

/** An order that found no place in a plan that stands. */
export interface RefusedLot {
  readonly lot: number;
  readonly options: readonly number[];
  /** [lot] s by which every lot must end */
  readonly latestEnd: Float64Array;
}

/** First order that is later than promised in the plan timed last, or has no run any more; -1 for none. */
function firstBroken(decoder: Decoder, { lot: own, latestEnd }: RefusedLot): number {
  let broken = -1;
  for (let lot = 0; lot < latestEnd.length; lot++) {
    if (lot === own || latestEnd[lot]! >= NEVER) continue;
    if (decoder.option[lot]! >= 0 && decoder.end[lot]! <= latestEnd[lot]!) continue;
    if (broken < 0 || latestEnd[lot]! < latestEnd[broken]!) broken = lot;
  }
  return broken;
}

/** Names an order that would be later than promised if the option stood at the end of its line, or else at its first place. */
function delaysAnother(
  decoder: Decoder,
  sequences: Sequences,
  refused: RefusedLot,
  option: number,
): PromiseRefusal | null {
  const { data, lots, options } = decoder.problem;
  const line = options.line[option]!;
  const { first, last } = allowedPositions(decoder.problem, sequences, option);
  for (const position of first === last ? [last] : [last, first]) {
    insertOption(sequences, line, position, option);
    decoder.decode(sequences);
    removeAt(sequences, line, position);
    if (decoder.option[refused.lot]! < 0) continue;
    const broken = firstBroken(decoder, refused);
    if (broken < 0) continue;
    const { orderId } = data.jobs[lots.job[broken]!]!;
    const late = decoder.option[broken]! < 0 ? Infinity : decoder.end[broken]! - refused.latestEnd[broken]!;
    const lineId = data.lines[line]!.id;
    const text =
      late < Infinity
        ? `Order ${orderId} would be finished ${Math.ceil(late / 60)} min later than promised.`
        : `Order ${orderId} would find no place any more.`;
    return {
      code: "delays-another",
      lineId,
      setupId: data.setups[options.setup[option]!]!.id,
      orderId,
      bySeconds: late < Infinity ? late : null,
      text,
    };
  }
  return null;
}

/** The rules that keep a lot out, option by option: those that refuse it in any plan, or the order that it would delay. Never empty. */
export function refusalsOf(
  decoder: Decoder,
  sequences: Sequences,
  refused: RefusedLot,
): readonly PromiseRefusal[] {
  const { data, lots, options } = decoder.problem;
  const delays = refused.options.flatMap((option) => {
    const delay = delaysAnother(decoder, sequences, refused, option);
    return delay === null ? [] : [{ option, delay }];
  });
  decoder.decode(sequences);
  const alone = whyNotInPlan(decoder, lots.job[refused.lot]!);
  const delayed = new Set(delays.map(({ option }) => data.lines[options.line[option]!]!.id));
  const kept = alone.filter(
    (reason: UnplannedReason) => reason.lineId === null || !delayed.has(reason.lineId),
  );
  return [...delays.map(({ delay }) => delay), ...kept];
}
