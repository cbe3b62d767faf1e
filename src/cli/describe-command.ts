import { type ArgumentSpec, type Command, LANGUAGE_OPTION, POLICY_ARGUMENT } from "./command.js";

const ARGUMENTS: readonly ArgumentSpec[] = [
  { ...POLICY_ARGUMENT, help: `${POLICY_ARGUMENT.help}; - is standard input` },
  { name: "CHECK", help: "the name of one of its checks" },
];
const EXIT_CODES = ["done", "never given", "the policy has errors or no such check, or a file could not be read"];

/** `tenbar describe`: the steps of a check as a form. */
export const DESCRIBE: Command = {
  name: "describe",
  usage: "tenbar describe POLICY CHECK [--subject FILE] [--at DATE-TIME]",
  summary: "print the steps of a check as a form, in JSON",
  about:
    "Prints the steps of one check as JSON: questions, fields, units, limits in words, and what applies. With --subject, a JSON file that holds a record's `subject`, the limits and what applies are those of that subject; with --at and --station also those of that day and that station, where an adoption is for them alone.",
  arguments: ARGUMENTS,
  options: [
    { name: "subject", value: "FILE", help: "a JSON file with the subject" },
    {
      name: "at",
      value: "DATE-TIME",
      help: "when the check is done, such as 2026-04-12 or 2026-04-12T07:04:00+01:00; no adoption applies where it is left out",
    },
    { name: "station", value: "NAME", help: "the station where the check is done" },
    LANGUAGE_OPTION,
  ],
  examples: [
    "tenbar describe policy.yaml daily",
    "tenbar describe policy.yaml daily --subject subject.json --at 2026-04-12",
    "tenbar describe policy.yaml daily --at 2026-05-10 --station north",
  ],
  exitCodes: EXIT_CODES,
  run: async (...given) => (await import("./program.js")).runDescribe(...given),
};

/** `tenbar schema`: the JSON Schema of a check's records. */
export const SCHEMA: Command = {
  name: "schema",
  usage: "tenbar schema POLICY CHECK",
  summary: "print the JSON Schema of the records that a check expects",
  about: "Prints the JSON Schema (draft 2020-12) of the records that one check expects.",
  arguments: ARGUMENTS,
  options: [],
  examples: ["tenbar schema policy.yaml daily", "tenbar schema plan.json daily > daily.schema.json"],
  exitCodes: EXIT_CODES,
  run: async (...given) => (await import("./program.js")).runSchema(...given),
};
