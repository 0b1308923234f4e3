import { configDefaults, defineConfig } from "vitest/config";
import { propertySeed, SEED_VARIABLE } from "./tests/helpers/property-seed.ts";

/** Of the whole run: a random one is drawn once. */
const seed = propertySeed(process.env[SEED_VARIABLE]);
console.log(`Properties that name no seed draw from ${SEED_VARIABLE}=${seed}.`);

/** Tests run on the sources: no build comes before them. */
const conditions = ["source", "module", "node", "development|production"];
const everyFile = {
  setupFiles: ["tests/helpers/seeded-properties.ts"],
  env: { [SEED_VARIABLE]: String(seed) },
};
const shared = { resolve: { conditions }, ssr: { resolve: { conditions } } };

/** One project a kind of test, so that the quick ones run alone. */
export default defineConfig({
  test: {
    passWithNoTests: true,
    projects: [
      {
        ...shared,
        test: {
          ...everyFile,
          name: "unit",
          include: ["packages/*/src/**/*.test.ts", "apps/*/src/**/*.test.{ts,tsx}"],
          exclude: [...configDefaults.exclude],
          // laws over hundreds of random plants, on a machine that may be busy
          testTimeout: 60_000,
        },
      },
      {
        ...shared,
        test: {
          ...everyFile,
          name: "property",
          include: ["tests/property/**/*.test.ts"],
          testTimeout: 60_000,
        },
      },
      {
        ...shared,
        test: {
          ...everyFile,
          name: "contract",
          globalSetup: ["tests/services/vitest-servers.ts"],
          include: ["tests/contract/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
      {
        ...shared,
        test: {
          ...everyFile,
          name: "golden",
          include: ["tests/golden/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
