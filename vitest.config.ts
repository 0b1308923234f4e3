import { configDefaults, defineConfig } from "vitest/config";

/** Tests run on the sources: no build comes before them. */
const conditions = ["source", "module", "node", "development|production"];
const shared = { resolve: { conditions }, ssr: { resolve: { conditions } } };

/** One project a kind of test, so that the quick ones run alone. */
export default defineConfig({
  test: {
    passWithNoTests: true,
    projects: [
      {
        ...shared,
        test: {
          name: "unit",
          include: ["packages/*/src/**/*.test.ts", "apps/*/src/**/*.test.{ts,tsx}"],
          exclude: [...configDefaults.exclude],
          // laws over hundreds of random plants, on a machine that may be busy
          testTimeout: 60_000,
        },
      },
      {
        ...shared,
        test: { name: "property", include: ["tests/property/**/*.test.ts"], testTimeout: 60_000 },
      },
      {
        ...shared,
        test: {
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
          name: "golden",
          include: ["tests/golden/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
