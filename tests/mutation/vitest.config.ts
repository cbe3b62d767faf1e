import { defineConfig } from "vitest/config";

/** The tests that bear on each room. */
const TESTS: Readonly<Record<string, readonly string[]>> = {
  quantities: ["tests/quantities/*.test.ts", "tests/outside/quantities/*.test.ts"],
  rules: ["tests/rules/*.test.ts"],
  steps: ["tests/cases.test.ts", "tests/contract/*.test.ts", "tests/evaluate/*.test.ts", "tests/outside/**/*.test.ts"],
  evaluate: ["tests/cases.test.ts", "tests/contract/*.test.ts", "tests/evaluate/*.test.ts", "tests/laws/plan.test.ts"],
};
/** Laws that take seconds: a mutant that only they would find counts as survived. */
const SLOW = [
  "tests/evaluate/laws.test.ts",
  "tests/evaluate/record-schema.test.ts",
  "tests/evaluate/tightening.test.ts",
];

export default defineConfig({
  test: {
    include: [...(TESTS[process.env["TENBAR_ROOM"] ?? "quantities"] ?? [])],
    exclude: SLOW,
    // Why: laws over tens of thousands of cases take seconds for each mutant, and the tables beside them find what they find.
    testNamePattern: /^(?!.*\d\d[ ,]000)/,
    setupFiles: ["tests/fix-seed.ts"],
    testTimeout: 120_000,
  },
});
