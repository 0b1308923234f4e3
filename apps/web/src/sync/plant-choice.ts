const storeKey = "formweek.plant";

/** The plant that was open last in this browser; null when none was. */
export function keptPlantId(): string | null {
  return localStorage.getItem(storeKey);
}

/** Keeps which plant is open. */
export function keepPlantId(plantId: string): void {
  localStorage.setItem(storeKey, plantId);
}
