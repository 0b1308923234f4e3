import tseslint from "typescript-eslint";

const code = ["**/*.ts", "**/*.tsx"];
const specs = ["**/*.test.ts", "**/*.test.tsx", "**/*.bench.ts", "tests/**"];
const configs = ["**/*.config.ts", "*.mjs"];
const pure = ["packages/capacity-model/src/**", "packages/scheduler/src/**", "packages/demo-plant/src/**"];

/** @param {string} selector @param {string} message */
const ban = (selector, message) => ({ selector, message });
/** @param {readonly string[]} names @param {string} message */
const banNames = (names, message) => names.map((name) => ({ name, message }));

// In the flat configuration a later block replaces a rule's options: each folder gets one whole list.
const bannedEverywhere = [
  ban("TSEnumDeclaration", "Write a union of string literals instead of an enum."),
  ban("TSModuleDeclaration[kind='namespace']", "Write a module (a file) instead of a namespace."),
];
const bannedInPure = [
  ...bannedEverywhere,
  ban(":function[async=true]", "Pure code is synchronous: return a value, let the caller wait."),
  ban("AwaitExpression", "Pure code is synchronous: take the awaited value as an argument."),
  ban("ImportExpression", "Import at the top of the file: pure code loads nothing while it runs."),
  ban(
    "Program > VariableDeclaration[kind='let'], Program > ExportNamedDeclaration > VariableDeclaration[kind='let']",
    "No module state: keep it in a value that is passed and returned.",
  ),
  ban(
    "ThrowStatement:not(FunctionDeclaration[id.name='invariant'] ThrowStatement)",
    "Return an issue as a value; a broken promise of the code itself goes through invariant().",
  ),
  ban(
    "CallExpression[callee.property.name=/^(localeCompare|toLocale.*)$/]",
    "Depends on the machine's language: compare with < and >, or use a named comparator.",
  ),
];
const bannedInEngine = [
  ...bannedInPure,
  ban("BinaryExpression[operator='**']", "Rounds differently between engines: multiply instead."),
  ban("AssignmentExpression[operator='**=']", "Rounds differently between engines: multiply instead."),
];
const bannedInShells = [
  ...bannedEverywhere,
  ban(
    "MemberExpression[object.name='config'][property.name='mode']",
    "Only compose() may ask for the mode: take the port it chose as an argument.",
  ),
];

const clockNames = banNames(
  ["Date", "Intl"],
  "Use integer seconds; wall-clock time belongs to time-zone.ts.",
);
const ambientNames = [
  ...banNames(["process"], "Take the setting as an argument."),
  ...banNames(["console"], "Return what is to be said, or call the log of the environment."),
  ...banNames(["performance"], "Take monotonicMs of the environment as an argument."),
  ...banNames(["fetch", "XMLHttpRequest", "WebSocket", "EventSource"], "Take the data as an argument."),
  ...banNames(["crypto"], "Take the seeded random of the environment, or ids, as an argument."),
  ...banNames(
    ["setTimeout", "setInterval", "setImmediate", "queueMicrotask"],
    "Pure code never waits: return, and let the caller come back.",
  ),
  ...banNames(["globalThis", "window", "self"], "Take what is needed as an argument."),
  ...banNames(["structuredClone"], "Build a new record, or copy the typed array."),
];
const randomness = [
  {
    object: "Math",
    property: "random",
    message: "Take the seeded random of the environment as an argument.",
  },
];
const inexactMaths = [
  "exp",
  "expm1",
  "log",
  "log1p",
  "log2",
  "log10",
  "pow",
  "sin",
  "cos",
  "tan",
  "cbrt",
  "hypot",
].map((property) => ({
  object: "Math",
  property,
  message: "Rounds differently between engines: use + - * / and Math.sqrt, which are exact by IEEE 754.",
}));

export default tseslint.config(
  {
    ignores: [
      "**/dist/**",
      "**/node_modules/**",
      "**/.turbo/**",
      "coverage/**",
      "**/test-results/**",
      "data/**",
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  {
    files: code,
    extends: [...tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { project: "./tsconfig.lint.json", tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      eqeqeq: "error",
      "@typescript-eslint/max-params": ["error", { max: 4 }],
      "max-lines": ["error", { max: 300, skipBlankLines: true, skipComments: true }],
      "no-restricted-syntax": ["error", ...bannedEverywhere],
      "no-restricted-exports": [
        "error",
        {
          restrictDefaultExports: {
            direct: true,
            named: true,
            defaultFrom: true,
            namedFrom: true,
            namespaceFrom: true,
          },
        },
      ],
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/no-floating-promises": "error",
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/require-array-sort-compare": ["error", { ignoreStringArrays: false }],
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: false },
      ],
    },
  },
  {
    files: ["packages/{application,adapters}/**/*.ts", "apps/**/*.{ts,tsx}"],
    rules: { "no-restricted-syntax": ["error", ...bannedInShells] },
  },
  {
    files: ["apps/web/src/**/*.{ts,tsx}"],
    ignores: ["apps/web/src/sync/**"],
    rules: {
      "no-restricted-globals": [
        "error",
        ...banNames(
          ["fetch", "XMLHttpRequest", "WebSocket", "EventSource"],
          "Only sync/ talks to the server.",
        ),
      ],
    },
  },
  {
    files: pure,
    ignores: specs,
    rules: {
      "no-restricted-globals": ["error", ...clockNames, ...ambientNames],
      "no-restricted-properties": ["error", ...randomness],
      "no-restricted-syntax": ["error", ...bannedInPure],
    },
  },
  {
    files: ["packages/capacity-model/src/**/time-zone.ts"],
    rules: { "no-restricted-globals": ["error", ...ambientNames] },
  },
  {
    files: ["packages/capacity-model/src/**"],
    ignores: specs,
    rules: { "no-param-reassign": ["error", { props: true }] },
  },
  {
    files: ["packages/scheduler/src/**"],
    ignores: specs,
    rules: {
      "no-restricted-properties": ["error", ...randomness, ...inexactMaths],
      "no-restricted-syntax": ["error", ...bannedInEngine],
    },
  },
  {
    files: specs,
    rules: { "max-lines": ["error", { max: 400, skipBlankLines: true, skipComments: true }] },
  },
  { files: configs, rules: { "no-restricted-exports": "off" } },
);
