import { AS_OF_OPTION, type Command, LANGUAGE_OPTION, POLICY_ARGUMENT } from "./command.js";

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
  run: async (...given) => (await import("./program.js")).runCompile(...given),
};
