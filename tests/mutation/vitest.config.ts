import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: [".mutation/room.bundle.js"],
    // Why: laws over tens of thousands of cases take seconds for each mutant, and the tables beside them find what they find. Tests
    // that a planted fault is found try the tests and not the sources.
    testNamePattern: /^(?!.*(\d[ ,]000| does not with | would not where ))/,
    // The other laws with few cases: a mutant that only a longer run would find counts as survived.
    env: { TENBAR_RUNS: "20", TENBAR_RULES: "300" },
    runner: "tests/mutation/fail-on-load.ts",
    setupFiles: ["tests/fix-seed.ts", "tests/mutation/stop-at-first.ts"],
    testTimeout: 120_000,
  },
});
