/** Which versions of its records a plant is at: what was worked out for the same ones is still right. */
export interface PlantRevisions {
  readonly plant: number;
  readonly book: number;
  readonly pins: number;
  readonly holds: number;
  /** Of the working plan, publications included; 0 before the first. */
  readonly step: number;
  /** Instant at which the first of the holds runs out, seconds; null: there is none. */
  readonly nextExpiry: number | null;
}

export interface RevisionRepository {
  /** One small statement; null for a plant that is not there. */
  readonly of: (plantId: string) => Promise<PlantRevisions | null>;
}
