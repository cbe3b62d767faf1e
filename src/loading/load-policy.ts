import { dirname } from "node:path";
import type { Diagnostic } from "../diagnostics/index.js";
import { type Policy, restorePlan } from "../evaluate/index.js";
import { createFileFinder, parseJson, readText } from "../files/index.js";
import { compilePolicy } from "../library/index.js";

export interface LoadOptions {
  /** The day, `2026-04-01`, against which a review date is compared. */
  readonly asOf?: string;
  /** Where `-` is read from; nothing where it is left out. */
  readonly standardInput?: AsyncIterable<Uint8Array>;
}

/** A policy where it can be used; `problem` where the file itself cannot be. */
export interface LoadedPolicy {
  readonly policy: Policy | undefined;
  readonly diagnostics: readonly Diagnostic[];
  readonly problem: string | undefined;
}

/** More than any policy, which ends at 1 MiB, so that a large saved plan is still read. */
const MOST_BYTES = 64 * 1024 * 1024;

/**
 * Loads a policy, YAML or JSON, with the parents that it extends, or a saved plan.
 *
 * Parents are shipped policies by name, and files in the policy's own folder or below it. Never throws on what a file holds.
 */
export async function loadPolicy(path: string, options: LoadOptions = {}): Promise<LoadedPolicy> {
  const read = await readText(path, options.standardInput ?? nothing(), MOST_BYTES);
  if ("problem" in read) return { policy: undefined, diagnostics: [], problem: read.problem };
  if (looksLikePlan(read.text)) return restoreText(read.text);
  const compiled = compilePolicy(read.text, {
    file: path,
    findParent: createFileFinder(path === "-" ? "." : dirname(path)),
    ...(options.asOf === undefined ? {} : { asOf: options.asOf }),
  });
  return { ...compiled, problem: undefined };
}

/** A saved plan is JSON and says so near its start. */
function looksLikePlan(text: string): boolean {
  return /^\uFEFF?\s*\{/.test(text) && /"kind"\s*:\s*"plan"/.test(text);
}

function restoreText(text: string): LoadedPolicy {
  const parsed = parseJson(text.replace(/^\uFEFF/, ""));
  if ("problem" in parsed)
    return { policy: undefined, diagnostics: [], problem: `the plan cannot be read: ${parsed.problem}` };
  const { policy, problem } = restorePlan(parsed.value);
  return { policy, diagnostics: [], problem };
}

async function* nothing(): AsyncGenerator<Uint8Array, void, undefined> {
  // Nothing is given on standard input.
}
