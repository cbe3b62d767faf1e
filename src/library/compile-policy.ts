import { createDiagnostics, type Diagnostic, type Diagnostics } from "../diagnostics/index.js";
import { makePolicy, type Policy } from "../evaluate/index.js";
import type { Plan } from "../model/index.js";
import { readPolicy } from "../read/index.js";
import { type FindParent, resolvePolicy } from "../resolve/index.js";
import type { DiagnosticWords } from "../words/index.js";
import { planWithParent } from "./plan-with-parent.js";

export interface CompileOptions {
  /** The name under which diagnostics and findings speak of the text; `policy.yaml` where none is given. */
  readonly file?: string;
  /** The day, `2026-04-01`, against which a review date is compared; no clock is read. */
  readonly asOf?: string;
  /**
   * The texts of policies that `extends` may name: a shipped one as `common-practice/open-circuit`, with or without its
   * version, a file as it is written there, `./brigade.yaml`.
   */
  readonly parents?: Readonly<Record<string, string>>;
  /** Finds a parent that `parents` does not hold, `tenbar/node` does so in the file system. */
  readonly findParent?: FindParent;
  /** The language of the diagnostics; English where none is given. */
  readonly words?: DiagnosticWords | undefined;
}

/** A policy where there is no error; diagnostics hold every mistake that one run can find, and warnings. */
export interface CompiledPolicy {
  readonly policy: Policy | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Compiles a policy text, YAML 1.2 or JSON.
 *
 * Never throws on any text: mistakes are diagnostics with line, column, what was found, what was wanted and the mend.
 */
export function compilePolicy(text: string, options: CompileOptions = {}): CompiledPolicy {
  const diagnostics = createDiagnostics(options.words);
  const plan = compilePlan(text, options, diagnostics);
  return { policy: plan === undefined ? undefined : makePolicy(plan), diagnostics: diagnostics.list() };
}

function compilePlan(text: string, options: CompileOptions, diagnostics: Diagnostics): Plan | undefined {
  const parsed = readPolicy({ file: options.file ?? "policy.yaml", text }, diagnostics);
  const resolved =
    parsed === undefined ? undefined : resolvePolicy(parsed, diagnostics, createFindParent(options, diagnostics));
  return resolved === undefined ? undefined : planWithParent(resolved, diagnostics, options.asOf)?.covered;
}

function createFindParent({ parents = {}, findParent }: CompileOptions, { words }: Diagnostics): FindParent {
  return (reference, fromFile) => {
    for (const name of [reference, reference.replace(/@[0-9]+$/, "")]) {
      const text = Object.hasOwn(parents, name) ? parents[name] : undefined;
      if (text !== undefined) return { source: { file: name, text } };
    }
    return findParent?.(reference, fromFile) ?? { problem: words.parents.notGiven, known: Object.keys(parents) };
  };
}
