// Runs every bomb in one process, as a service would that lives on, and writes a line of JSON for each.
import { performance } from "node:perf_hooks";
import { compilePolicy } from "../../src/index.js";
import { BOMBS } from "./bombs.js";

for (const { name, times, text } of BOMBS) {
  const bomb = text();
  const start = performance.now();
  const codes = new Set<string>();
  let compiled = 0;
  for (let round = 0; round < times; round += 1) {
    const { policy, diagnostics } = compilePolicy(bomb);
    if (policy !== undefined) compiled += 1;
    for (const { code } of diagnostics) codes.add(code);
  }
  const each = (performance.now() - start) / times;
  process.stdout.write(`${JSON.stringify({ name, compiled, codes: [...codes], each })}\n`);
}
process.stdout.write(`${JSON.stringify({ name: "end", polluted: Reflect.get({}, "polluted") ?? null })}\n`);
