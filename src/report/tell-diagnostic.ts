import type { Diagnostic } from "../diagnostics/index.js";

/** What is wrong, what was wanted and the mend, a line each: for readers who show the place themselves. */
export function tellDiagnostic({ message, wanted, mend }: Diagnostic): string {
  return [
    message,
    ...(wanted === undefined ? [] : [`wanted: ${wanted}`]),
    ...(mend === undefined ? [] : [`mend: ${mend}`]),
  ].join("\n");
}
