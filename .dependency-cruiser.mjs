/**
 * Who may import whom. Each rule has its reason; `tests/contract/architecture.test.ts` shows that each one bites.
 */
const engine = "^packages/scheduler/src/";
const spec = "[.](test|bench)[.]tsx?$"; // colocated unit tests and microbenchmarks
const kernelBench = "^tests/bench/kernel/";
const driverFree = "^packages/(capacity-model|scheduler|contracts|demo-plant|application)/src/";

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const graph = [
  {
    name: "no-circular",
    severity: "error",
    comment: "A cycle hides the direction of knowledge.",
    from: {},
    to: { circular: true },
  },
  {
    name: "not-unresolvable",
    severity: "error",
    comment: "An import nobody can follow is a typing error or a missing file.",
    from: {},
    to: { couldNotResolve: true },
  },
  {
    name: "no-undeclared-dependency",
    severity: "error",
    comment: "A package that no manifest names works only by luck of hoisting.",
    from: {},
    to: { dependencyTypes: ["npm-no-pkg", "npm-unknown"] },
  },
  {
    name: "no-dev-dependency-in-production",
    severity: "error",
    comment: "What ships must not need what only builds and tests need.",
    from: { path: "^(packages|apps)/[^/]+/src/", pathNot: spec },
    to: { dependencyTypes: ["npm-dev"], dependencyTypesNot: ["type-only"], pathNot: "^node_modules/@types/" },
  },
];

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const packageDirection = [
  {
    name: "model-imports-nothing",
    severity: "error",
    comment: "capacity-model is pure functions over records: itself, zod, date-fns.",
    from: { path: "^packages/capacity-model/src/", pathNot: spec },
    to: { pathNot: ["^packages/capacity-model/src/", "^node_modules/(zod|date-fns|@date-fns)/"] },
  },
  {
    name: "engine-imports-model-only",
    severity: "error",
    comment: "scheduler: data in, data out. Only capacity-model's public index.",
    from: { path: engine, pathNot: spec },
    to: { pathNot: [engine, "^packages/capacity-model/src/index[.]ts$"] },
  },
  {
    name: "demo-plant-imports-model-only",
    severity: "error",
    comment: "The demo plant and the generator are data about a plant, nothing else.",
    from: { path: "^packages/demo-plant/src/", pathNot: spec },
    to: { pathNot: ["^packages/demo-plant/src/", "^packages/capacity-model/src/index[.]ts$"] },
  },
  {
    name: "contracts-import-zod-only",
    severity: "error",
    comment: "The wire format stands alone; server and board each map it to what they know.",
    from: { path: "^packages/contracts/src/", pathNot: spec },
    to: { pathNot: ["^packages/contracts/src/", "^node_modules/zod/"] },
  },
  {
    name: "application-imports-domain-only",
    severity: "error",
    comment: "Use cases see ports, never a driver, a framework or the wire format.",
    from: { path: "^packages/application/src/", pathNot: spec },
    to: { pathNot: ["^packages/application/src/", "^packages/(capacity-model|scheduler)/src/index[.]ts$"] },
  },
  {
    name: "adapters-only-below-composition",
    severity: "error",
    comment: "Only the composition root may choose an adapter.",
    from: { pathNot: ["^packages/(adapters|composition)/", "^tests/(contract|e2e|bench)/"] },
    to: { path: "^packages/adapters/" },
  },
  {
    name: "adapters-know-ports-only",
    severity: "error",
    comment:
      "A driver serves the application's ports; it knows neither the wire, nor the demo, nor who composes it.",
    from: { path: "^packages/adapters/" },
    to: { path: "^packages/(contracts|demo-plant|composition)/" },
  },
  {
    name: "composition-only-from-mains",
    severity: "error",
    comment: "Only a process entry point (or a test) may compose; others may name its types.",
    from: { pathNot: ["^packages/composition/", "^apps/(api|worker|cli)/src/main[.]ts$", "^tests/"] },
    to: { path: "^packages/composition/", dependencyTypesNot: ["type-only"] },
  },
  {
    name: "nothing-imports-apps",
    severity: "error",
    comment: "Apps are ends: nothing below leans on them.",
    from: { pathNot: ["^apps/", "^tests/"] },
    to: { path: "^apps/" },
  },
  {
    name: "no-app-to-app",
    severity: "error",
    comment: "Two processes share a package, never each other's files.",
    from: { path: "^apps/([^/]+)/" },
    to: { path: "^apps/", pathNot: "^apps/$1/" },
  },
  {
    name: "packages-by-index",
    severity: "error",
    comment: "Across packages through the public face only: a package's index, or an adapter family's.",
    from: { path: "^(?:packages|apps|tests)/([^/]+)/", pathNot: kernelBench },
    to: {
      path: "^packages/[^/]+/src/",
      pathNot: [
        "^packages/$1/",
        "^packages/[^/]+/src/index[.]ts$",
        "^packages/adapters/src/[^/]+/index[.]ts$",
      ],
    },
  },
  {
    name: "kernel-bench-by-its-kernel",
    severity: "error",
    comment:
      "The bench beside C times one inner loop, which no public face shows: it sees that loop's folder alone.",
    from: { path: kernelBench },
    to: { path: "^packages/[^/]+/src/", pathNot: `${engine}improve/sequence/` },
  },
  {
    name: "shells-call-use-cases-only",
    severity: "error",
    comment: "Server, worker and command line never drive the engine themselves.",
    from: { path: "^apps/(api|worker|cli)/" },
    to: { path: "^packages/scheduler/" },
  },
  {
    name: "board-talks-over-the-wire",
    severity: "error",
    comment: "The board knows the wire format; plans and use cases stay on the server.",
    from: { path: "^apps/web/" },
    to: { path: "^packages/(application|adapters|composition|demo-plant)/" },
  },
  {
    name: "board-tries-edits-in-trial-only",
    severity: "error",
    comment:
      "The engine runs in the browser for one thing: what an edit by hand would come to. Elsewhere it is types.",
    from: { path: "^apps/web/", pathNot: "^apps/web/src/trial/" },
    to: { path: "^packages/scheduler/", dependencyTypesNot: ["type-only"] },
  },
];

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const drivers = [
  {
    name: "sql-in-sql-adapter-only",
    severity: "error",
    comment: "One place speaks to the database.",
    from: { pathNot: "^packages/adapters/src/sql/" },
    to: { path: "^node_modules/(drizzle-orm|pg|pg-.+|@types/pg|@electric-sql)/" },
  },
  {
    name: "redis-in-bullmq-adapter-only",
    severity: "error",
    comment: "One place speaks to the queue.",
    from: { pathNot: "^packages/adapters/src/bullmq/" },
    to: { path: "^node_modules/(bullmq|ioredis|redis)/" },
  },
  {
    name: "tables-in-tabular-adapter-only",
    severity: "error",
    comment: "One place reads and writes CSV and XLSX on the server; tests may make files to feed it.",
    from: { pathNot: ["^packages/adapters/src/tabular/", "^tests/"] },
    to: { path: "^node_modules/(csv-parse|read-excel-file|write-excel-file)/" },
  },
  {
    name: "log-in-system-adapter-only",
    severity: "error",
    comment: "Everyone else logs through the port.",
    from: { pathNot: "^packages/adapters/src/system/" },
    to: { path: "^node_modules/pino/" },
  },
  {
    name: "fastify-in-api-only",
    severity: "error",
    comment: "The web framework is the server's own affair.",
    from: { pathNot: ["^apps/api/", "^tests/e2e/"] },
    to: { path: "^node_modules/(fastify|fastify-type-provider-zod|@fastify)/" },
  },
  {
    name: "react-in-board-only",
    severity: "error",
    comment: "Screens live in the board.",
    from: { pathNot: "^apps/web/" },
    to: { path: "^node_modules/(react|react-dom|@types/react|@types/react-dom)/" },
  },
  {
    name: "no-node-core-in-driver-free",
    severity: "error",
    comment: "No files, crypto, timers, threads or process in packages that only compute.",
    from: { path: driverFree, pathNot: spec },
    to: { dependencyTypes: ["core"] },
  },
  {
    name: "adapter-families-apart",
    severity: "error",
    comment: "sql, bullmq, in-process, thread, system and tabular must not know one another.",
    from: { path: "^packages/adapters/src/([^/]+)/" },
    to: { path: "^packages/adapters/src/[^/]+/", pathNot: "^packages/adapters/src/$1/" },
  },
];

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const insideEngine = [
  {
    name: "problem-knows-no-search",
    severity: "error",
    comment: "What is asked does not depend on how it is answered.",
    from: { path: `${engine}problem/`, pathNot: spec },
    to: { path: `${engine}(plan|cost|construct|improve|explain|audit|stop)/` },
  },
  {
    name: "plan-and-cost-know-no-search",
    severity: "error",
    comment: "Timing and price of a plan hold whoever made it.",
    from: { path: `${engine}(plan|cost)/`, pathNot: spec },
    to: { path: `${engine}(construct|improve|explain|audit|stop)/` },
  },
  {
    name: "stop-is-a-leaf",
    severity: "error",
    comment: "A stopping rule counts and looks at its environment, nothing else.",
    from: { path: `${engine}stop/`, pathNot: spec },
    to: { path: engine, pathNot: [`${engine}stop/`, `${engine}solve-env[.]ts$`] },
  },
  {
    name: "construct-knows-no-improve",
    severity: "error",
    comment: "A first plan is built without the search that betters it.",
    from: { path: `${engine}construct/`, pathNot: spec },
    to: { path: `${engine}(improve|explain|audit|stop)/` },
  },
  {
    name: "operators-apart",
    severity: "error",
    comment: "Search operators never import one another; only the shared contract.",
    from: { path: `${engine}improve/operators/`, pathNot: ["/index[.]ts$", spec] },
    to: { path: `${engine}improve/operators/`, pathNot: "/operator[.]ts$" },
  },
  {
    name: "explain-knows-no-search",
    severity: "error",
    comment: "Reasons are re-asked of the rules, not logged by the search.",
    from: { path: `${engine}explain/`, pathNot: spec },
    to: { path: `${engine}(improve|construct|stop|audit)/` },
  },
  {
    name: "audit-is-independent",
    severity: "error",
    comment:
      "The audit shares no code with what it checks: only the input records, the plan record and the record of its verdict.",
    from: { path: `${engine}audit/`, pathNot: spec },
    to: {
      path: engine,
      pathNot: [
        `${engine}audit/`,
        `${engine}problem/problem-data[.]ts$`,
        `${engine}plan/plan[.]ts$`,
        `${engine}result[.]ts$`,
      ],
    },
  },
  {
    name: "audit-shares-types-only",
    severity: "error",
    comment: "Of the records it shares with the engine the audit uses the types, never a function.",
    from: { path: `${engine}audit/`, pathNot: spec },
    to: { path: engine, pathNot: `${engine}audit/`, dependencyTypesNot: ["type-only"] },
  },
  {
    name: "nobody-leans-on-the-audit",
    severity: "error",
    comment: "Were the search to use the audit, both would share its mistakes.",
    from: {
      path: engine,
      pathNot: ["/audit/", "/src/(index|portfolio/member-group|trade-off/trade-off)[.]ts$", spec],
    },
    to: { path: `${engine}audit/` },
  },
];

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const board = [
  {
    name: "board-state-is-pure",
    severity: "error",
    comment: "Reducer, selectors and kernels: no React, no network, no drawing.",
    from: { path: "^apps/web/src/(state|kernels)/", pathNot: spec },
    to: {
      pathNot: ["^apps/web/src/(state|kernels)/", "^packages/(capacity-model|contracts)/src/index[.]ts$"],
    },
  },
  {
    name: "trial-is-pure",
    severity: "error",
    comment: "Trying an edit is engine and kernels: no React, no network, no drawing.",
    from: { path: "^apps/web/src/trial/", pathNot: spec },
    to: {
      pathNot: ["^apps/web/src/(trial|kernels)/", "^packages/(scheduler|contracts)/src/index[.]ts$"],
    },
  },
  {
    name: "kernels-know-no-state",
    severity: "error",
    comment: "A kernel is maths over its arguments.",
    from: { path: "^apps/web/src/kernels/" },
    to: { path: "^apps/web/src/state/" },
  },
  {
    name: "board-computes-in-kernels-only",
    severity: "error",
    comment:
      "Outside the kernels the capacity model is a set of types: the server computes, the board shows.",
    from: { path: "^apps/web/src/", pathNot: ["^apps/web/src/kernels/", spec] },
    to: { path: "^packages/capacity-model/", dependencyTypesNot: ["type-only"] },
  },
  {
    name: "render-never-writes",
    severity: "error",
    comment: "Drawing reads a frame argument; it can't dispatch or fetch.",
    from: { path: "^apps/web/src/render/" },
    to: { path: "^apps/web/src/(sync|app|features|interactions)/|^apps/web/src/state/store[.]ts$" },
  },
  {
    name: "features-apart",
    severity: "error",
    comment: "A feature that needs another is joined with it in app/.",
    from: { path: "^apps/web/src/features/([^/]+)/" },
    to: { path: "^apps/web/src/features/", pathNot: "^apps/web/src/features/$1/" },
  },
  {
    name: "board-lower-never-imports-app",
    severity: "error",
    comment: "app/ joins the parts; the parts don't know it.",
    from: { path: "^apps/web/src/", pathNot: "^apps/web/src/app/" },
    to: { path: "^apps/web/src/app/" },
  },
  {
    name: "board-parses-the-wire-in-sync-only",
    severity: "error",
    comment: "Answers are parsed once, where they arrive; elsewhere they are types.",
    from: { path: "^apps/web/src/", pathNot: ["^apps/web/src/sync/", spec] },
    to: { path: "^packages/contracts/", dependencyTypesNot: ["type-only"] },
  },
];

/** @type {import('dependency-cruiser').IConfiguration["forbidden"]} */
const tests = [
  {
    name: "no-production-to-tests",
    severity: "error",
    comment: "What ships knows nothing of how it is tested.",
    from: { path: "^(packages|apps)/", pathNot: spec },
    to: { path: ["^tests/", spec, "^node_modules/(vitest|fast-check|@playwright|playwright-core)/"] },
  },
  {
    name: "unit-tests-stay-home",
    severity: "error",
    comment:
      "A unit test of a driver-free package sees its own package and the test libraries; wider ones live in tests/.",
    from: {
      path: "^packages/(capacity-model|scheduler|application|contracts|demo-plant)/.+[.](?:test|bench)[.]tsx?$",
    },
    to: {
      pathNot: [
        "^packages/$1/",
        "^packages/[^/]+/src/index[.]ts$",
        "^tests/(arbitraries|helpers)/",
        "^node_modules/(vitest|fast-check|zod|date-fns|@date-fns)/",
      ],
    },
  },
  {
    name: "test-kinds-apart",
    severity: "error",
    comment: "One kind of test does not lean on another; what they share is named so.",
    from: { path: "^tests/([^/]+)/" },
    to: {
      path: "^tests/",
      pathNot: ["^tests/$1/", "^tests/(arbitraries|fixtures|helpers|services)/", "^tests/[^/]+/suites/"],
    },
  },
  {
    name: "nobody-imports-a-test",
    severity: "error",
    comment: "A test file is run, never used; shared parts get a file of their own.",
    from: {},
    to: { path: "[.](test|spec)[.]tsx?$" },
  },
];

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: [...graph, ...packageDirection, ...drivers, ...insideEngine, ...board, ...tests],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)dist/" },
    tsPreCompilationDeps: true, // type-only imports count: a type is knowledge too
    combinedDependencies: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["source", "import", "types", "default"],
      mainFields: ["module", "main", "types"],
    },
  },
};
