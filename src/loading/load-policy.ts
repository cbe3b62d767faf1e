import { dirname } from "node:path";
import type { Diagnostic } from "../diagnostics/index.js";
import { type Policy, restorePlan } from "../evaluate/index.js";
import { createFileFinder, noInput, parseJson, readText } from "../files/index.js";
import { compilePolicy } from "../library/index.js";
import { type Catalogue, type DiagnosticWords, ENGLISH_FILES, type FileWords } from "../words/index.js";

export interface LoadOptions {
  /** The day, `2026-04-01`, against which a review date is compared. */
  readonly asOf?: string;
  /** Where `-` is read from; nothing where it is left out. */
  readonly standardInput?: AsyncIterable<Uint8Array>;
  /** The language of the diagnostics; English where none is given. */
  readonly words?: (DiagnosticWords & Pick<Catalogue, "files">) | undefined;
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
  const words = options.words?.files ?? ENGLISH_FILES;
  const read = await readText(path, options.standardInput ?? noInput(), MOST_BYTES, words);
  if ("problem" in read) return { policy: undefined, diagnostics: [], problem: read.problem };
  const saved = readSavedPlan(read.text, words);
  if (saved !== undefined) return saved;
  const compiled = compilePolicy(read.text, {
    file: path,
    findParent: createFileFinder(path === "-" ? "." : dirname(path), words),
    words: options.words,
    ...(options.asOf === undefined ? {} : { asOf: options.asOf }),
  });
  return { ...compiled, problem: undefined };
}

/** A saved plan is a JSON object that says so itself; anything else is compiled, which has better words for its mistakes. */
function readSavedPlan(text: string, words: FileWords): LoadedPolicy | undefined {
  if (!text.trimStart().startsWith("{")) return undefined;
  const parsed = parseJson(text, words.json);
  if ("problem" in parsed) {
    if (!/"kind"\s*:\s*"plan"/.test(text)) return undefined;
    return { policy: undefined, diagnostics: [], problem: words.planUnreadable(parsed.problem) };
  }
  const { value } = parsed;
  if (typeof value !== "object" || value === null || !("kind" in value) || value.kind !== "plan") return undefined;
  const { policy, problem } = restorePlan(value);
  return { policy, diagnostics: [], problem };
}
