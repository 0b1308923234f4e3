import { type AppError, type FieldFault, appError } from "../errors.ts";

const MOST_FAULTS = 50;

/** The changes cannot be thought through; each fault names its field. */
export function scenarioRefused(name: string, faults: readonly FieldFault[]): AppError {
  const [first] = faults;
  const more = faults.length > 1 ? ` And ${faults.length - 1} more.` : "";
  return appError(
    "scenario-refused",
    {
      title: "These changes cannot be thought through.",
      cause: `${name}: ${first?.problem ?? ""}${more}`,
      remedy: "Correct the entries named below and try again.",
    },
    faults.slice(0, MOST_FAULTS),
  );
}

/** No such scenario in the plant. */
export function scenarioNotFound(id: string): AppError {
  return appError("not-found", {
    title: "There is no such scenario.",
    cause: `No scenario "${id}" is known in this plant: it may have been deleted.`,
    remedy: "Look at the scenarios as they are now, and choose one of them.",
  });
}

/** It was written by someone else after it was looked at. */
export function scenarioChanged(name: string, by: string): AppError {
  return appError("scenario-changed", {
    title: "The scenario changed in the meantime.",
    cause: `"${name}" was written by ${by} after you looked at it.`,
    remedy: "Look at it as it is now, then repeat your change.",
  });
}

/** What it came to is not what it would come to now. `moved`: what is another since then, each a sentence. */
export function scenarioOutdated(moved: readonly string[]): AppError {
  return appError("scenario-outdated", {
    title: "The scenario cannot be adopted so.",
    cause: moved.join(" "),
    remedy: "Work it out again, then adopt it.",
  });
}

/** So many are kept at the most. */
export function tooManyScenarios(most: number): AppError {
  return appError("too-many-scenarios", {
    title: "There are too many scenarios.",
    cause: `A plant keeps ${most} scenarios at the most.`,
    remedy: "Delete some that are not needed any more.",
  });
}
