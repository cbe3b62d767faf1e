import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, expect, it } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "without-browser-"));
afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 }));

// Why: the page needs a browser's names, and in one project with it the library would be given them too.
it("the library names nothing that only a browser has", () => {
  const settings = {
    extends: resolve("tsconfig.json"),
    compilerOptions: { lib: ["ES2023"], typeRoots: [resolve("node_modules/@types")] },
    include: [resolve("src")],
  };
  const file = join(folder, "tsconfig.json");
  writeFileSync(file, JSON.stringify(settings));
  const { stdout } = spawnSync(process.execPath, ["node_modules/typescript/bin/tsc", "-p", file], { encoding: "utf8" });
  expect(stdout).toBe("");
}, 60_000);
