import { writeText } from "../files/index.js";
import { loadPolicy } from "../node.js";
import { makePrintable, renderDiagnostics, renderResolved } from "../report/index.js";
import type { Command } from "./command.js";

/** `tenbar compile`: everything that is wrong with a policy, and the plan that it makes. */
export const COMPILE: Command = {
  name: "compile",
  usage: "tenbar compile POLICY [--out PLAN.json] [--resolved]",
  summary: "check a policy and show every mistake in it",
  about:
    "Compiles a policy (YAML or JSON) and shows every mistake that one run can find: the place, what was found, what was wanted and the mend. With --out it saves the plan, from which records can be judged without the policy. With --resolved it prints the policy as it stands after `extends`, each limit with its place.",
  options: [
    { name: "out", value: "FILE", help: "save the plan as JSON" },
    { name: "resolved", help: "print checks, steps and limits as they stand, and where each is stated" },
    { name: "format", value: "FORMAT", values: ["text", "json"], help: "text (the default) or json" },
    {
      name: "as-of",
      value: "DATE",
      help: "the day against which a review date is compared; today where it is left out",
    },
  ],
  examples: [
    "tenbar compile policies/common-practice/open-circuit.yaml",
    "tenbar compile examples/lowmere/policy.yaml --resolved",
    "tenbar compile examples/lowmere/policy.yaml --out plan.json",
  ],
  exitCodes: [
    "no errors; there may be warnings",
    "never given",
    "the policy has errors, or could not be read or saved",
  ],
  operands: [1, 1],
  async run({ positionals, switches, values }, streams, report) {
    const [path = ""] = positionals;
    const asOf = values.get("as-of") ?? streams.today;
    const { policy, diagnostics, problem } = await loadPolicy(path, { asOf, standardInput: streams.input });
    if (problem !== undefined) {
      streams.error(`${makePrintable(path)}: ${makePrintable(problem)}\n`);
      return 2;
    }
    if (values.get("format") === "json") await streams.out(`${JSON.stringify({ diagnostics }, undefined, 2)}\n`);
    else {
      if (policy !== undefined && switches.has("resolved"))
        await streams.out(`${renderResolved(policy.plan, report)}\n`);
      await streams.out(renderDiagnostics(diagnostics, report));
    }
    if (policy === undefined) return 2;
    const out = values.get("out");
    const failed = out === undefined ? undefined : await writeText(out, `${JSON.stringify(policy.plan)}\n`);
    if (failed === undefined) return 0;
    streams.error(`${makePrintable(out ?? "")}: the plan was not saved: ${failed}\n`);
    return 2;
  },
};
