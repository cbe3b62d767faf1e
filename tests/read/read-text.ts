import { readFileSync } from "node:fs";
import { createDiagnostics, type Diagnostic } from "../../src/diagnostics/index.js";
import { type ParsedPolicy, readPolicy } from "../../src/read/index.js";

/** Twenty lines that every kind of mistake can be made in. */
export const SMALL = readExample("small");
/** The policy that the documentation of the language explains. */
export const OPEN_CIRCUIT = readExample("open-circuit");

function readExample(name: string): string {
  return readFileSync(new URL(`texts/${name}.yaml`, import.meta.url), "utf8");
}

export function readText(text: string): { policy: ParsedPolicy | undefined; list: readonly Diagnostic[] } {
  const diagnostics = createDiagnostics();
  const policy = readPolicy({ file: "lowmere.yaml", text }, diagnostics);
  return { policy, list: diagnostics.list() };
}

/** The small policy with one stretch replaced; the stretch must be there. */
export function alter(from: string, to: string, text = SMALL): string {
  if (!text.includes(from)) throw new Error(`the example has no ${from}`);
  return text.replace(from, () => to);
}
