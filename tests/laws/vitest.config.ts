import { defineConfig } from "vitest/config";
import { quickTree } from "../read/quick-tree-plugin.js";

// The long run of the laws: `npm run test:long`, with `TENBAR_CASES` cases of each.
export default defineConfig({
  plugins: [quickTree],
  test: {
    include: ["tests/{laws,compare,evaluate,quantities,rules}/**/*.test.ts", "tests/outside/quantities/*.test.ts"],
    setupFiles: ["tests/fix-seed.ts", "tests/laws/tell-cases.ts"],
    env: { TENBAR_CASES: process.env["TENBAR_CASES"] ?? "200000" },
    testTimeout: 36_000_000,
    maxWorkers: "100%",
  },
});
