export { DEMO_WEEKS, demoOrders, demoPlant } from "./demo/demo-plant.ts";
export type { DemoWeek } from "./demo/demo-plant.ts";
