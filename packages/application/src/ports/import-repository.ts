import type { Plant } from "@formweek/capacity-model";
import type { OrderBookChange } from "./order-repository.ts";

export type ImportKind = "orders" | "plant";

/** What an accepted import writes; computed at the dry run, so that acceptance writes what was shown. */
export type ImportChange =
  | { readonly kind: "orders"; readonly change: OrderBookChange }
  | { readonly kind: "plant"; readonly plant: Plant };

export interface AppliedCounts {
  readonly added: number;
  readonly changed: number;
  readonly unchanged: number;
}

/** A dry run kept until it is accepted or forgotten. */
export interface StoredImport {
  readonly id: string;
  readonly plantId: string;
  /** Revision of the order book (orders) or the plant (plant; 0 for a new one) that the dry run was made against. */
  readonly baseRevision: number;
  /** Null when the file has errors and can not be accepted. */
  readonly change: ImportChange | null;
  readonly counts: AppliedCounts;
  readonly createdAt: number;
  readonly createdBy: string;
  readonly accepted: ImportAcceptance | null;
}

export interface ImportAcceptance {
  readonly at: number;
  readonly by: string;
  /** Revision after the write. */
  readonly revision: number;
  readonly applied: AppliedCounts;
  /** Number of the step of the order book that was kept; null: none was. Absent in older ones. */
  readonly step?: number | null;
}

export interface ImportRepository {
  readonly insert: (stored: StoredImport) => Promise<void>;
  /** Locks the row until the transaction ends, so that two acceptances of one import come one after the other. */
  readonly getForUpdate: (plantId: string, importId: string) => Promise<StoredImport | null>;
  /** Records the acceptance; true if it had none yet. The change is dropped from the row: it is spent. */
  readonly accept: (importId: string, acceptance: ImportAcceptance) => Promise<boolean>;
  /** Forgets dry runs made before `at` that nobody accepted; returns how many. */
  readonly forgetBefore: (at: number) => Promise<number>;
}
