export { DEMO_WEEKS, demoOrders, demoPlant } from "./demo/demo-plant.ts";
export type { DemoWeek } from "./demo/demo-plant.ts";
export { generatePlant } from "./generator/generate-plant.ts";
export type { GeneratedPlant, PlantSize } from "./generator/generate-plant.ts";
