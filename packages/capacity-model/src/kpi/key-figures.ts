import type { ProductionRecord } from "./production-record.ts";

/**
 * Key figures of ISO 22400-2 (formulas as in a public ontology of the standard and in OPC 40501-1). Ratios, not percent.
 * A figure whose divisor is 0 is null: there is nothing to say.
 */
export interface KeyFigures {
  /** APT / PBT; setup counts as a loss. */
  readonly availability: number | null;
  /** PRI × PQ / APT; above 1 where the planned cycle is generous. */
  readonly effectiveness: number | null;
  /** GQ / PQ */
  readonly qualityRatio: number | null;
  /** Overall equipment effectiveness: availability × effectiveness × quality. */
  readonly oeeIndex: number | null;
  /** Net equipment effectiveness, (APT + AUST) / PBT × effectiveness × quality; setup is no loss. */
  readonly neeIndex: number | null;
  /** AUBT / PBT */
  readonly allocationEfficiency: number | null;
  /** APT / AUBT */
  readonly utilisationEfficiency: number | null;
  /** APT / (APT + ADET) */
  readonly technicalEfficiency: number | null;
  /** AUST / (APT + AUST) */
  readonly setupRatio: number | null;
  /** SQ / PQ */
  readonly scrapRatio: number | null;
  /** SQ / PSQ */
  readonly actualToPlannedScrap: number | null;
  /** PQ / AOET, pieces per hour */
  readonly throughputPerHour: number | null;
  /** AUBT / AOET */
  readonly allocationRatio: number | null;
  /** APT / AOET */
  readonly productionProcessRatio: number | null;
}

/** Key figures of a record. */
export function keyFiguresOf(record: ProductionRecord): KeyFigures {
  const processing = record.productionSeconds + record.setupSeconds;
  const availability = ratio(record.productionSeconds, record.plannedBusySeconds);
  const effectiveness = ratio(
    record.plannedSecondsPerPiece * record.producedPieces,
    record.productionSeconds,
  );
  const qualityRatio = ratio(record.goodPieces, record.producedPieces);
  const throughput = ratio(record.producedPieces, record.executionSeconds);
  return {
    availability,
    effectiveness,
    qualityRatio,
    oeeIndex: product(availability, effectiveness, qualityRatio),
    neeIndex: product(ratio(processing, record.plannedBusySeconds), effectiveness, qualityRatio),
    allocationEfficiency: ratio(record.busySeconds, record.plannedBusySeconds),
    utilisationEfficiency: ratio(record.productionSeconds, record.busySeconds),
    technicalEfficiency: ratio(record.productionSeconds, record.productionSeconds + record.delaySeconds),
    setupRatio: ratio(record.setupSeconds, processing),
    scrapRatio: ratio(record.scrapPieces, record.producedPieces),
    actualToPlannedScrap: ratio(record.scrapPieces, record.plannedScrapPieces),
    throughputPerHour: throughput === null ? null : throughput * 3600,
    allocationRatio: ratio(record.busySeconds, record.executionSeconds),
    productionProcessRatio: ratio(record.productionSeconds, record.executionSeconds),
  };
}

function ratio(part: number, whole: number): number | null {
  return whole === 0 ? null : part / whole;
}

function product(...factors: readonly (number | null)[]): number | null {
  return factors.reduce<number | null>(
    (result, factor) => (result === null || factor === null ? null : result * factor),
    1,
  );
}
