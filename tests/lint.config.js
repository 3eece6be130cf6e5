// The lint rules. Run from the top folder: npx eslint -c tests/lint.config.js src tests examples
import { builtinModules } from "node:module";
import jsdoc from "eslint-plugin-jsdoc";
import { defineConfig } from "eslint/config";
import tseslint from "typescript-eslint";

const TYPED = ["src/**/*.ts", "tests/**/*.ts"];
const PLAIN = ["**/*.js", "**/*.mjs"];

// Floor 9, the only one that may know the machine it runs on.
const TOP_FLOOR = ["src/cli/**", "src/build/**"];

const MACHINE_ONLY = "exists in Node alone; below src/cli everything must run in a browser too.";

// Slips of the language itself, beside those that the type checker finds.
const SLIPS = Object.fromEntries(
  [
    "constructor-super",
    "eqeqeq",
    "for-direction",
    "no-async-promise-executor",
    "no-case-declarations",
    "no-compare-neg-zero",
    "no-cond-assign",
    "no-constant-binary-expression",
    "no-control-regex",
    "no-debugger",
    "no-dupe-else-if",
    "no-dupe-keys",
    "no-duplicate-case",
    "no-empty",
    "no-empty-character-class",
    "no-empty-pattern",
    "no-ex-assign",
    "no-fallthrough",
    "no-invalid-regexp",
    "no-irregular-whitespace",
    "no-loss-of-precision",
    "no-misleading-character-class",
    "no-promise-executor-return",
    "no-prototype-builtins",
    "no-regex-spaces",
    "no-self-assign",
    "no-self-compare",
    "no-sparse-arrays",
    "no-unreachable",
    "no-unreachable-loop",
    "no-unsafe-finally",
    "no-unsafe-optional-chaining",
    "no-useless-backreference",
    "no-useless-escape",
    "no-var",
    "prefer-const",
    "use-isnan",
    "valid-typeof",
  ].map((rule) => [rule, "error"]),
);

export default defineConfig(
  { ignores: ["dist/", "out/"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },

  {
    files: TYPED,
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { project: "tests/tsconfig.json" } },
    rules: {
      ...SLIPS,
      "@typescript-eslint/consistent-type-imports": "error",
      "@typescript-eslint/consistent-type-exports": "error",
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      // Typed arrays in hot loops: their elements exist, and the checker cannot know it.
      "@typescript-eslint/no-non-null-assertion": "off",
      "@typescript-eslint/no-confusing-void-expression": ["error", { ignoreArrowShorthand: true }],
      "@typescript-eslint/no-unnecessary-condition": [
        "error",
        { allowConstantLoopConditions: "only-allowed-literals" },
      ],
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", ignoreRestSiblings: true },
      ],
    },
  },

  {
    files: ["src/**/*.ts"],
    extends: [jsdoc.configs["flat/recommended-tsdoc-error"]],
    rules: {
      // A file is one notion. Tables of data may switch the limit off and say why.
      "max-lines": ["error", { max: 300 }],
      "jsdoc/require-jsdoc": [
        "error",
        {
          enableFixer: false,
          publicOnly: true,
          require: {
            ClassDeclaration: true,
            FunctionDeclaration: true,
            MethodDefinition: true,
          },
          contexts: [
            "ExportNamedDeclaration > VariableDeclaration",
            "ExportNamedDeclaration > TSInterfaceDeclaration",
            "ExportNamedDeclaration > TSTypeAliasDeclaration",
            "ExportNamedDeclaration > TSInterfaceDeclaration TSPropertySignature",
            "ExportNamedDeclaration > ClassDeclaration PropertyDefinition:not([accessibility='private'])",
          ],
        },
      ],
      // A thing without parameters to explain is said in its first sentence.
      "jsdoc/require-description": "off",
      "jsdoc/require-param-description": "error",
      "jsdoc/require-returns-description": "error",
      "jsdoc/require-hyphen-before-param-description": ["error", "always"],
      "jsdoc/require-param-type": "off",
      "jsdoc/no-types": "error",
      "jsdoc/require-throws": "off",
      "jsdoc/require-throws-type": "off",
      "jsdoc/tag-lines": ["error", "any", { startLines: 1 }],
    },
  },

  {
    files: ["src/**/*.ts"],
    ignores: TOP_FLOOR,
    rules: {
      "no-console": "error",
      "no-restricted-globals": [
        "error",
        ...[
          "Buffer",
          "process",
          "global",
          "require",
          "__dirname",
          "__filename",
          "setImmediate",
        ].map((name) => ({ name, message: `${name} ${MACHINE_ONLY}` })),
      ],
      "no-restricted-imports": [
        "error",
        {
          paths: builtinModules.map((name) => ({ name, message: `It ${MACHINE_ONLY}` })),
          patterns: [{ group: ["node:*"], message: `It ${MACHINE_ONLY}` }],
        },
      ],
    },
  },

  {
    files: ["tests/**/*.ts"],
    rules: {
      // Outside programs and packages that serve as judges often come without types.
      "@typescript-eslint/no-unsafe-argument": "off",
      "@typescript-eslint/no-unsafe-assignment": "off",
      "@typescript-eslint/no-unsafe-call": "off",
      "@typescript-eslint/no-unsafe-member-access": "off",
      "@typescript-eslint/no-unsafe-return": "off",
      // A made-up neighbour of the thing under test may well do nothing.
      "@typescript-eslint/no-empty-function": "off",
    },
  },

  {
    files: PLAIN,
    rules: { ...SLIPS, "no-unused-vars": ["error", { argsIgnorePattern: "^_" }] },
  },
);
