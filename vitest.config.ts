import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/bench/**"],
    setupFiles: ["tests/fix-seed.ts"],
    testTimeout: 120_000,
    // Why: by default one core is left to an editor, which on two cores doubles the time.
    maxWorkers: "100%",
  },
});
