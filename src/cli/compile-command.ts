import { writeText } from "../files/index.js";
import { type Catalogue, ENGINE_VERSION, type Policy } from "../index.js";
import { type LoadedPolicy, loadPolicy } from "../node.js";
import {
  makePrintable,
  renderAnnotations,
  renderDiagnostics,
  renderPolicyHead,
  renderResolved,
  renderSarif,
} from "../report/index.js";
import { AS_OF_OPTION, type Command, LANGUAGE_OPTION, type Looks, POLICY_ARGUMENT, readLanguage } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

const FORMATS = ["text", "json", "sarif", "github"] as const;

/** `tenbar compile`: everything that is wrong with a policy, and the plan that it makes. */
export const COMPILE: Command = {
  name: "compile",
  usage: "tenbar compile POLICY [--out FILE] [--resolved] [--format FORMAT]",
  summary: "check a policy and show every mistake in it",
  about:
    "Compiles a policy and shows every mistake that one run can find: the place, what was found, what was wanted and the mend. With --out it saves the plan, from which records can be judged without the policy. With --resolved it prints the policy as it stands after `extends`, each limit with its place.",
  arguments: [{ ...POLICY_ARGUMENT, help: `${POLICY_ARGUMENT.help}; - is standard input` }],
  options: [
    { name: "out", value: "FILE", help: "save the plan as JSON" },
    { name: "resolved", help: "print checks, steps and limits as they stand, and where each is stated" },
    {
      name: "format",
      value: "FORMAT",
      values: FORMATS,
      help: "text (the default), json, sarif (SARIF 2.1.0) or github (workflow annotations)",
    },
    { ...AS_OF_OPTION, help: `${AS_OF_OPTION.help}; today where it is left out` },
    LANGUAGE_OPTION,
  ],
  examples: [
    "tenbar compile policy.yaml",
    "tenbar compile policy.yaml --resolved",
    "tenbar compile policy.yaml --format sarif > policy.sarif",
    "tenbar compile policy.yaml --out plan.json --as-of 2026-04-01",
  ],
  exitCodes: [
    "no errors; there may be warnings",
    "never given",
    "the policy has errors, or could not be read or saved",
  ],
  async run(given, streams, looks) {
    const [path = ""] = given.positionals;
    const asOf = given.values.get("as-of") ?? streams.today;
    const loaded = await loadPolicy(path, { asOf, standardInput: streams.input, words: readLanguage(given) });
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
    return out === undefined ? 0 : savePlan(loaded.policy, out, path, readLanguage(given), streams);
  },
};

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
    if (switches.has("resolved")) await out(`${renderResolved(policy.plan, looks.out)}\n`);
    await out(`${renderPolicyHead(policy.plan, looks.out).join("\n")}\n\n`);
  }
  await out(renderDiagnostics(diagnostics, looks.out));
}

async function savePlan(
  { plan }: Policy,
  out: string,
  path: string,
  { files }: Catalogue,
  { error }: Streams,
): Promise<ExitCode> {
  const problem = await writeText(out, `${JSON.stringify(plan)}\n`, [path], files);
  error(
    makePrintable(
      problem === undefined ? `${out}: the plan is saved` : `${out}: the plan was not saved: ${problem}`,
    ).concat("\n"),
  );
  return problem === undefined ? 0 : 2;
}
