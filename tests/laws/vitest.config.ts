import { defineConfig } from "vitest/config";
import { quickTree } from "../read/quick-tree-plugin.js";

// The long run of the laws: `npm run test:long`.
export default defineConfig({
  plugins: [quickTree],
  test: {
    include: ["tests/{laws,compare,evaluate}/**/*.test.ts"],
    setupFiles: ["tests/fix-seed.ts"],
    env: { TENBAR_RUNS: process.env["TENBAR_RUNS"] ?? "200000" },
    testTimeout: 36_000_000,
    maxWorkers: "100%",
  },
});
