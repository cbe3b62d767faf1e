import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/bench/**"],
    setupFiles: ["tests/fix-seed.ts"],
    testTimeout: 120_000,
  },
});
