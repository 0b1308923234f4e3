import type { PlantRevisions } from "../ports/revision-repository.ts";
import type { StandingDesk } from "./standing-desk.ts";

/** A desk with the versions of the records that it was opened on. */
export interface KeptDesk {
  readonly revisions: PlantRevisions;
  readonly standing: StandingDesk;
}
