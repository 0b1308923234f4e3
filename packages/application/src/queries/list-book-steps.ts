import { plantNotFound } from "../not-found.ts";
import type { NumberedBookStep } from "../ports/book-step-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Changes that all steps of an answer hold together, unless the newest alone has more. */
const MOST_CHANGES = 20_000;

export interface BookStepsInput extends PlantInput {
  readonly desk: string;
}

/** What the asker did to the order book at a desk, oldest first, for taking it back and doing it again. */
export const listBookSteps: UseCase<BookStepsInput, readonly NumberedBookStep[]> = {
  role: "planner",
  run: (ports, { plantId, desk }, { id: by }) =>
    ports.store.read(async ({ plants, bookSteps }) =>
      (await plants.get(plantId)) === null
        ? refused(plantNotFound(plantId))
        : ok(await bookSteps.newest({ plantId, desk, by }, MOST_CHANGES)),
    ),
};
