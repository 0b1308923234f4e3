/**
 * Time and quantity elements of one line over one spell, or of one order, in the terms of ISO 22400-2 (wording condensed from a
 * public ontology of the standard; the names in brackets are its abbreviations). Times in seconds, >= 0.
 */
export interface ProductionRecord {
  /** Time open for orders: operation time less planned downtime [PBT]. */
  readonly plannedBusySeconds: number;
  /** Value-adding time only [APT]. */
  readonly productionSeconds: number;
  /** Preparing orders at the line [AUST]. */
  readonly setupSeconds: number;
  /** Malfunctions, minor stops and other unplanned extensions [ADET]. */
  readonly delaySeconds: number;
  /** Used for the execution of orders: production, setup and delay [AUBT]. */
  readonly busySeconds: number;
  /** Order start to order end, waiting and transport included [AOET]. */
  readonly executionSeconds: number;
  /** Planned run time per piece [PRI]. */
  readonly plannedSecondsPerPiece: number;
  /** Pieces produced, good and scrap [PQ]. */
  readonly producedPieces: number;
  /** Pieces that meet the requirements [GQ]. */
  readonly goodPieces: number;
  /** Pieces that do not [SQ]. */
  readonly scrapPieces: number;
  /** Scrap that was planned for, such as at starts [PSQ]. */
  readonly plannedScrapPieces: number;
}

/** A record in which nothing happened. */
export const NOTHING_PRODUCED: ProductionRecord = {
  plannedBusySeconds: 0,
  productionSeconds: 0,
  setupSeconds: 0,
  delaySeconds: 0,
  busySeconds: 0,
  executionSeconds: 0,
  plannedSecondsPerPiece: 0,
  producedPieces: 0,
  goodPieces: 0,
  scrapPieces: 0,
  plannedScrapPieces: 0,
};

/**
 * Records added up, say the orders of a week. The planned time per piece becomes the mean over the pieces produced, so that
 * planned time for what was produced stays the same. No record gives `NOTHING_PRODUCED`.
 */
export function sumOfRecords(records: readonly ProductionRecord[]): ProductionRecord {
  const sum = (pick: (record: ProductionRecord) => number): number =>
    records.reduce((total, record) => total + pick(record), 0);
  const producedPieces = sum((record) => record.producedPieces);
  const plannedSeconds = sum((record) => record.plannedSecondsPerPiece * record.producedPieces);
  return {
    plannedBusySeconds: sum((record) => record.plannedBusySeconds),
    productionSeconds: sum((record) => record.productionSeconds),
    setupSeconds: sum((record) => record.setupSeconds),
    delaySeconds: sum((record) => record.delaySeconds),
    busySeconds: sum((record) => record.busySeconds),
    executionSeconds: sum((record) => record.executionSeconds),
    plannedSecondsPerPiece: producedPieces === 0 ? 0 : plannedSeconds / producedPieces,
    producedPieces,
    goodPieces: sum((record) => record.goodPieces),
    scrapPieces: sum((record) => record.scrapPieces),
    plannedScrapPieces: sum((record) => record.plannedScrapPieces),
  };
}
