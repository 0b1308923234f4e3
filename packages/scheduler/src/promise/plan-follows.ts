import type { Plan } from "../plan/plan.ts";
import type { Decoder } from "../timing/decoder.ts";

/** An order whose runs are not where the plan has them; null when the decoder times the plan as it is. */
export function firstElsewhere({ problem, option, start, end, copy }: Decoder, plan: Plan): string | null {
  const { data, lots, options, origin, moulds } = problem;
  const jobOf = new Map(data.jobs.map(({ orderId }, job) => [orderId, job]));
  const copyOf = new Map(
    plan.segments.flatMap((segment) =>
      segment.kind === "run" && segment.mould !== null
        ? [[`${segment.lot} ${segment.orderId}`, segment.mould] as const]
        : [],
    ),
  );
  for (const lot of plan.lots) {
    const job = jobOf.get(lot.orderId);
    const index = job === undefined ? -1 : lots.firstLot[job]! + lot.lot;
    const chosen = job === undefined || index >= lots.firstLot[job + 1]! ? -1 : option[index]!;
    if (chosen < 0) return lot.orderId;
    const mould = copyOf.get(`${lot.lot} ${lot.orderId}`);
    const sameCopy =
      mould === undefined
        ? copy[index]! < 0
        : copy[index]! >= 0 &&
          mould.mouldId === data.moulds[moulds.mouldOfCopy[copy[index]!]!]!.id &&
          mould.copy === copy[index]! - moulds.firstCopy[moulds.mouldOfCopy[copy[index]!]!]!;
    const same =
      sameCopy &&
      data.lines[options.line[chosen]!]!.id === lot.lineId &&
      data.setups[options.setup[chosen]!]!.id === lot.setupId &&
      origin + start[index]! === lot.start &&
      origin + end[index]! === lot.end;
    if (!same) return lot.orderId;
  }
  return null;
}

/** An order of the plan that is not made any more, or not in as many lots; null where all are. */
export function firstMissing({ problem, option }: Decoder, { lots: planned }: Plan): string | null {
  const { data, lots } = problem;
  const jobOf = new Map(data.jobs.map(({ orderId }, job) => [orderId, job]));
  const missing = planned.find(({ orderId, lot }) => {
    const job = jobOf.get(orderId);
    const index = job === undefined ? -1 : lots.firstLot[job]! + lot;
    return job === undefined || index >= lots.firstLot[job + 1]! || option[index]! < 0;
  });
  return missing?.orderId ?? null;
}
