// Bundles the pure entry point for a browser and judges with it where there is no Node at all.
// Usage: check-browser.ts HOME, a folder whose `node_modules` holds the packed package
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { build } from "esbuild";

await checkBrowser(process.argv[2] ?? "");

async function checkBrowser(home: string): Promise<void> {
  // Invariant: a built-in module of Node cannot be resolved for a browser, so the bundle fails where one is imported.
  const result = await build({
    entryPoints: [join(home, "judge-in-browser.mjs")],
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    logLevel: "error",
  });
  const context = createContext({ TextEncoder, TextDecoder, URL }, { codeGeneration: { strings: false, wasm: false } });
  const answer: unknown = runInContext(`${result.outputFiles[0]?.text ?? ""}\nglobalThis.answer`, context);
  if (answer !== "meets withdraw") throw new Error(`judged otherwise in a browser: ${String(answer)}`);
}
