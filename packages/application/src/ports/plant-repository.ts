import type { Plant } from "@formweek/capacity-model";

export interface PlantHead {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly revision: number;
}

export interface StoredPlant {
  readonly plant: Plant;
  /** Counts up by one at each write, from 1. */
  readonly revision: number;
}

export interface PlantRepository {
  /** All plants, by id. */
  readonly list: () => Promise<readonly PlantHead[]>;
  readonly get: (plantId: string) => Promise<StoredPlant | null>;
  /**
   * Writes the plant if its revision still is `expectedRevision` (null: it must not exist yet) and returns the new
   * revision; null when it is not, and nothing is written.
   */
  readonly put: (plant: Plant, expectedRevision: number | null) => Promise<number | null>;
}
