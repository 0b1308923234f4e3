import { densityChoice } from "../sync/density.ts";

function applyDensity(): void {
  document.documentElement.dataset["density"] = densityChoice.read();
}

/** Puts the chosen density on the page, now and whenever the choice changes. */
export function keepDensity(): void {
  applyDensity();
  densityChoice.subscribe(applyDensity);
}
