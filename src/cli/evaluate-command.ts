import { type Assessment, CONSEQUENCES, evaluate, type Policy } from "../index.js";
import { loadPolicy, readRecords } from "../node.js";
import {
  countVerdict,
  makePrintable,
  NO_VERDICTS,
  type ReportOptions,
  renderAssessment,
  renderClosing,
  renderDiagnostics,
} from "../report/index.js";
import type { Command } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

/** `tenbar evaluate`: records against a policy. */
export const EVALUATE: Command = {
  name: "evaluate",
  usage: "tenbar evaluate POLICY RECORDS... [--format text|json|ndjson]",
  summary: "evaluate check records against a policy",
  about:
    "Evaluates check records against a policy, or against a plan that compile saved. RECORDS are files, each with one JSON record, an array of them, or one record a line (NDJSON); - is standard input. What cannot be read is named, and the rest is still evaluated.",
  options: [
    {
      name: "format",
      value: "FORMAT",
      values: ["text", "json", "ndjson"],
      help: "text (the default), json, or ndjson: one assessment a line",
    },
    {
      name: "fail-on",
      value: "LEVEL",
      values: [...CONSEQUENCES, "never"],
      help: "the mildest finding that gives exit code 1: note, advise, refer (the default), withdraw, or never",
    },
    { name: "allow-empty", help: "no record at all is no failure" },
  ],
  examples: [
    "tenbar evaluate policies/common-practice/open-circuit.yaml examples/records/leak.json",
    "tenbar evaluate plan.json records.ndjson --format ndjson",
    "cat records.ndjson | tenbar evaluate plan.json -",
  ],
  exitCodes: [
    "no finding at or above --fail-on",
    "a finding at or above --fail-on, or a record that could not be judged",
    "could not run, an input could not be read, the policy has errors, or there was no record",
  ],
  operands: [2, Number.POSITIVE_INFINITY],
  async run(given, streams, report) {
    const [path = "", ...inputs] = given.positionals;
    const loaded = await loadPolicy(path, { standardInput: streams.input });
    if (loaded.problem !== undefined) streams.error(`${makePrintable(path)}: ${makePrintable(loaded.problem)}\n`);
    if (loaded.diagnostics.length > 0) streams.error(renderDiagnostics(loaded.diagnostics, report));
    if (loaded.policy === undefined) return 2;
    return evaluateInputs(loaded.policy, inputs, given, streams, report);
  },
};

async function evaluateInputs(
  policy: Policy,
  inputs: readonly string[],
  given: ReadArguments,
  streams: Streams,
  report: ReportOptions,
): Promise<ExitCode> {
  const format = given.values.get("format") ?? "text";
  const tally = { counts: NO_VERDICTS, records: 0, isUnreadable: false, fails: false };
  const writer = createWriter(format, policy, streams, report);
  reading: for (const input of inputs) {
    for await (const record of readRecords(input, streams.input)) {
      if ("problem" in record) {
        const place = record.line === undefined ? "" : `:${record.line}`;
        streams.error(`${makePrintable(input)}${place}: ${makePrintable(record.problem)}\n`);
        tally.isUnreadable = true;
        continue;
      }
      const assessment = evaluate(policy, record.value, { digest: true });
      tally.records += 1;
      tally.counts = countVerdict(tally.counts, assessment);
      if (isFailure(assessment, given.values.get("fail-on") ?? "refer")) tally.fails = true;
      if (!(await writer.write(assessment, record.isSingle && inputs.length === 1))) break reading;
    }
  }
  await writer.close(tally.counts);
  if (tally.isUnreadable) return 2;
  if (tally.records === 0 && !given.switches.has("allow-empty")) {
    streams.error("no record was evaluated\n");
    return 2;
  }
  return tally.fails ? 1 : 0;
}

/** The levels of --fail-on, mildest first. */
const LEVELS: readonly string[] = CONSEQUENCES;

function isFailure({ findings, judged }: Assessment, level: string): boolean {
  if (level === "never") return false;
  const least = LEVELS.indexOf(level);
  return !judged || findings.some(({ consequence }) => CONSEQUENCES.indexOf(consequence) >= least);
}

interface Writer {
  /** False where nobody reads any more. */
  write(assessment: Assessment, isSingle: boolean): Promise<boolean>;
  close(counts: typeof NO_VERDICTS): Promise<void>;
}

function createWriter(format: string, policy: Policy, { out }: Streams, report: ReportOptions): Writer {
  if (format === "ndjson") {
    return { write: (assessment) => out(`${JSON.stringify(assessment)}\n`), close: async () => undefined };
  }
  if (format === "json") return createJsonWriter(out);
  return {
    write: (assessment) => out(`${renderAssessment(assessment, report)}\n`),
    close: async (counts) => void (await out(renderClosing(counts, policy.plan, report))),
  };
}

/** An object for an input of one object, else an array that is written as it grows. */
function createJsonWriter(out: Streams["out"]): Writer {
  let single: Assessment | undefined;
  let written = 0;
  return {
    async write(assessment, isSingle) {
      if (isSingle) {
        single = assessment;
        return true;
      }
      written += 1;
      return out(`${written === 1 ? "[\n" : ",\n"}${JSON.stringify(assessment, undefined, 2)}`);
    },
    async close() {
      if (single !== undefined) await out(`${JSON.stringify(single, undefined, 2)}\n`);
      else await out(written === 0 ? "[]\n" : "\n]\n");
    },
  };
}
