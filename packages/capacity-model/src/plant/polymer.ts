import { z } from "zod";

export const PolymerName = z.enum(["PP", "PS", "APET", "PLA", "HDPE", "PVC"]);
export type PolymerName = z.infer<typeof PolymerName>;

/**
 * Thermal and mechanical properties of a sheet polymer; editable, defaults in `polymer-defaults.ts`.
 * `shearStrengthMpa` is for trimming at room temperature, `trimHotFactor` (0…1] lowers it for trimming in the warm mould.
 */
export const Polymer = z.object({
  name: PolymerName,
  densityKgPerM3: z.number().min(500).max(3000),
  conductivityWPerMK: z.number().positive().max(5),
  /** Effective thermal diffusivity for cooling, m²/s. */
  coolingDiffusivityM2PerS: z.number().min(1e-9).max(1e-5),
  /** Heat from room to forming temperature, kJ/kg. */
  heatToFormKjPerKg: z.number().positive().max(2000),
  formingTemperatureC: z.number().min(40).max(300),
  demouldMeanTemperatureC: z.number().min(20).max(200),
  mouldTemperatureC: z.number().min(0).max(150),
  formingAirBar: z.number().positive().max(20),
  shearStrengthMpa: z.number().positive().max(200),
  trimHotFactor: z.number().min(0.1).max(1),
});
export type Polymer = z.infer<typeof Polymer>;
