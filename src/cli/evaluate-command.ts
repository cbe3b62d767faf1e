import { CONSEQUENCES } from "../terms/index.js";
import { AS_OF_OPTION, type Command, LANGUAGE_OPTION, POLICY_ARGUMENT } from "./command.js";

const FORMATS = ["text", "json", "ndjson", "junit", "csv"] as const;

/** `tenbar evaluate`: records against a policy. */
export const EVALUATE: Command = {
  name: "evaluate",
  usage: "tenbar evaluate POLICY RECORDS... [--format FORMAT]",
  summary: "evaluate check records against a policy",
  about:
    "Evaluates check records against a policy and prints what each comes to. What cannot be read is named, and the rest is still evaluated. An assessment speaks of one record; it says nothing about findings of earlier records.",
  arguments: [
    POLICY_ARGUMENT,
    {
      name: "RECORDS...",
      help: "files, each with one JSON record, an array of them, or one record a line (NDJSON); - is standard input",
    },
  ],
  options: [
    {
      name: "format",
      value: "FORMAT",
      values: FORMATS,
      help: "text (the default), json, ndjson (one assessment a line), junit (XML for build servers: a suite a record, a test case a result) or csv (a table: a row a result)",
    },
    {
      name: "fail-on",
      value: "LEVEL",
      values: [...CONSEQUENCES, "never"],
      help: "the mildest finding that gives exit code 1: note, advise, refer (the default) or withdraw; never: 0 whatever is found, also for a record that could not be judged",
    },
    { name: "allow-empty", help: "no record at all is no failure" },
    AS_OF_OPTION,
    LANGUAGE_OPTION,
  ],
  examples: [
    "tenbar evaluate policy.yaml record.json",
    "tenbar evaluate plan.json records.ndjson --format ndjson",
    "tenbar evaluate policy.yaml records.ndjson --format junit > checks.xml",
    "cat records.ndjson | tenbar evaluate policy.yaml - --fail-on withdraw",
  ],
  exitCodes: [
    "no finding at or above --fail-on",
    "a finding at or above --fail-on, or a record that could not be judged",
    "could not run, an input could not be read, the policy has errors, or there was no record",
  ],
  run: async (...given) => (await import("./program.js")).runEvaluate(...given),
};
