import { writeText } from "../files/index.js";
import { ENGINE_VERSION, type Policy } from "../index.js";
import { type LoadedPolicy, loadPolicy } from "../node.js";
import {
  makePrintable,
  renderAnnotations,
  renderDiagnostics,
  renderPolicyHead,
  renderResolved,
  renderSarif,
} from "../report/index.js";
import type { Looks } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

/** Compiles a policy, reports on it and saves its plan where that is wanted. */
export async function runCompile(given: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode> {
  const [path = ""] = given.positionals;
  const asOf = given.values.get("as-of") ?? streams.today;
  const loaded = await loadPolicy(path, { asOf, standardInput: streams.input, words: looks.words });
  if (loaded.problem !== undefined) {
    streams.error(makePrintable(`${path}: ${loaded.problem}`).concat("\n"));
    if (given.values.get("format") === "sarif") {
      const problem = { file: path, text: loaded.problem };
      await streams.out(renderSarif([], { version: ENGINE_VERSION, problem }));
    }
    return 2;
  }
  await printReport(loaded, given, streams, looks);
  const out = given.values.get("out");
  if (loaded.policy === undefined) return 2;
  return out === undefined ? 0 : savePlan(loaded.policy, out, path, looks, streams);
}

async function printReport(
  { policy, diagnostics }: LoadedPolicy,
  { switches, values }: ReadArguments,
  { out }: Streams,
  looks: Looks,
): Promise<void> {
  switch (values.get("format")) {
    case "json":
      await out(`${JSON.stringify({ diagnostics }, undefined, 2)}\n`);
      return;
    case "sarif":
      await out(renderSarif(diagnostics, { version: ENGINE_VERSION }));
      return;
    case "github":
      await out(renderAnnotations(diagnostics));
      return;
  }
  if (policy !== undefined) {
    if (switches.has("resolved")) await out(`${renderResolved(policy.plan, looks.out, looks.words)}\n`);
    await out(`${renderPolicyHead(policy.plan, looks.out).join("\n")}\n\n`);
  }
  await out(renderDiagnostics(diagnostics, looks.out));
}

async function savePlan(
  { plan }: Policy,
  out: string,
  path: string,
  { words }: Looks,
  { error }: Streams,
): Promise<ExitCode> {
  const problem = await writeText(out, `${JSON.stringify(plan)}\n`, [path], words.files);
  const { planSaved, planNotSaved } = words.program;
  error(makePrintable(`${out}: ${problem === undefined ? planSaved : planNotSaved(problem)}`).concat("\n"));
  return problem === undefined ? 0 : 2;
}
