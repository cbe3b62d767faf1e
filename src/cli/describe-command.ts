import { findNearest } from "../diagnostics/index.js";
import { parseJson, readText } from "../files/index.js";
import { type Catalogue, describeCheck, type Policy, recordSchema } from "../index.js";
import { loadPolicy } from "../node.js";
import { parseRecordTime } from "../quantities/index.js";
import { makePrintable, renderDiagnostics } from "../report/index.js";
import {
  type ArgumentSpec,
  type Command,
  LANGUAGE_OPTION,
  type Looks,
  POLICY_ARGUMENT,
  readLanguage,
} from "./command.js";
import type { ExitCode, Streams } from "./streams.js";

const MOST_BYTES = 8 * 1024 * 1024;
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
  async run(given, streams, looks) {
    const { positionals, values } = given;
    const words = readLanguage(given);
    const [path = "", check = ""] = positionals;
    const at = values.get("at");
    const station = values.get("station");
    // Why: a day that cannot be read would describe the check as on no day at all.
    if (at !== undefined && parseRecordTime(at) === undefined) {
      streams.error(`\`--at ${makePrintable(at)}\` is no time such as 2026-04-12 or 2026-04-12T07:04:00+01:00\n`);
      return 2;
    }
    const policy = await load(path, streams, looks, words);
    if (policy === undefined) return 2;
    const file = values.get("subject");
    if (file === "-" && path === "-") {
      streams.error("`-` is named twice; standard input is read once\n");
      return 2;
    }
    const subject = file === undefined ? {} : await readSubject(file, streams, words);
    if (subject === undefined) return 2;
    const circumstances = {
      words,
      ...(at === undefined ? {} : { at }),
      ...(station === undefined ? {} : { station }),
    };
    return print(describeCheck(policy, check, subject, circumstances), check, policy, streams);
  },
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
  async run({ positionals }, streams, looks) {
    const [path = "", check = ""] = positionals;
    const policy = await load(path, streams, looks);
    return policy === undefined ? 2 : print(recordSchema(policy, check), check, policy, streams);
  },
};

async function load(path: string, streams: Streams, looks: Looks, words?: Catalogue): Promise<Policy | undefined> {
  const { policy, diagnostics, problem } = await loadPolicy(path, { standardInput: streams.input, words });
  if (problem !== undefined) streams.error(`${makePrintable(path)}: ${makePrintable(problem)}\n`);
  if (diagnostics.length > 0) streams.error(`${renderDiagnostics(diagnostics, looks.error)}\n`);
  return policy;
}

async function readSubject(
  file: string,
  streams: Streams,
  { files }: Catalogue,
): Promise<Readonly<Record<string, unknown>> | undefined> {
  const read = await readText(file, streams.input, MOST_BYTES, files);
  const parsed = "problem" in read ? read : parseJson(read.text);
  if ("problem" in parsed) {
    streams.error(makePrintable(`${file}: ${parsed.problem}`).concat("\n"));
    return undefined;
  }
  const { value } = parsed;
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return { ...value };
  streams.error(`${makePrintable(file)}: a subject is a JSON object\n`);
  return undefined;
}

async function print(value: object | undefined, check: string, policy: Policy, streams: Streams): Promise<ExitCode> {
  if (value !== undefined) {
    await streams.out(`${JSON.stringify(value, undefined, 2)}\n`);
    return 0;
  }
  const known = policy.plan.checks.map((one) => one.check);
  const nearest = findNearest(check, known);
  const hint = nearest === undefined ? "" : `; did you mean \`${nearest}\`?`;
  streams.error(makePrintable(`the policy has no check \`${check}\`; it has ${known.join(", ")}${hint}`).concat("\n"));
  return 2;
}
