import { type Assessment, CONSEQUENCES, evaluate, type Policy } from "../index.js";
import { loadPolicy, readRecords } from "../node.js";
import { countVerdict, makePrintable, NO_VERDICTS, renderDiagnostics, type VerdictCounts } from "../report/index.js";
import type { InputWords } from "../words/index.js";
import type { AssessmentWriter } from "./assessment-writer.js";
import type { Looks } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";
import { createWriter } from "./write-assessments.js";

/** Evaluates the records of every input and tells by the exit code what was found. */
export async function runEvaluate(given: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode> {
  const [path = "", ...inputs] = given.positionals;
  const asOf = given.values.get("as-of");
  const { words } = looks;
  const options = { standardInput: streams.input, words, ...(asOf === undefined ? {} : { asOf }) };
  const loaded = await loadPolicy(path, options);
  if (loaded.problem !== undefined) streams.error(makePrintable(`${path}: ${loaded.problem}`).concat("\n"));
  if (loaded.diagnostics.length > 0) streams.error(`${renderDiagnostics(loaded.diagnostics, looks.error)}\n`);
  if (loaded.policy === undefined) return 2;
  const writer = await createWriter(given.values.get("format") ?? "text", loaded.policy, streams, looks.out);
  return evaluateInputs(loaded.policy, inputs, writer, given, streams, looks);
}

interface Tally {
  readonly counts: VerdictCounts;
  readonly records: number;
  readonly fails: boolean;
}

async function evaluateInputs(
  policy: Policy,
  inputs: readonly string[],
  writer: AssessmentWriter,
  given: ReadArguments,
  streams: Streams,
  { words }: Looks,
): Promise<ExitCode> {
  const failOn = given.values.get("fail-on") ?? "refer";
  let tally: Tally = { counts: NO_VERDICTS, records: 0, fails: false };
  let isRead = true;
  const said = words.program.inputs;
  reading: for (const input of inputs) {
    for await (const record of readRecords(input, streams.input, words.files)) {
      if ("problem" in record) {
        const problem = describeUnread(input, record, said);
        streams.error(`${problem}\n`);
        tally = { ...tally, counts: { ...tally.counts, notRead: tally.counts.notRead + 1 } };
        isRead = await writer.refuse(problem);
        if (!isRead) break reading;
        continue;
      }
      const assessment = evaluate(policy, record.value, { digest: true, words });
      if (!assessment.judged) streams.error(`${nameUnjudged(input, record, said)}\n`);
      tally = {
        counts: countVerdict(tally.counts, assessment),
        records: tally.records + 1,
        fails: tally.fails || isFailure(assessment, failOn),
      };
      const isSingle = record.isSingle && inputs.length === 1;
      isRead = await writer.write(assessment, { isSingle, at: readAt(record.value) });
      if (!isRead) break reading;
    }
  }
  const isEmpty = tally.records === 0 && !given.switches.has("allow-empty");
  // Why: said first, since deference and cautions would push it out of sight.
  if (isEmpty) streams.error(`${said.noRecord(describeEmpty(inputs, tally.counts, said))}\n`);
  if (isRead) await writer.close(tally.counts);
  if (tally.counts.notRead > 0 || isEmpty) return 2;
  return tally.fails ? 1 : 0;
}

/** The time that a record states; undefined where it states no text. */
function readAt(record: unknown): string | undefined {
  if (typeof record !== "object" || record === null || !("at" in record)) return undefined;
  return typeof record.at === "string" ? record.at : undefined;
}

function describeUnread(
  input: string,
  { problem, line, column }: { problem: string; line: number | undefined; column: number | undefined },
  said: InputWords,
): string {
  const place = [input, line, column].filter((part) => part !== undefined).join(":");
  return makePrintable(`${place}: ${said.notJudged(problem)}`);
}

/** Why: a record without an id could not be found again among the lines of a file. */
function nameUnjudged(input: string, { line }: { line: number | undefined }, said: InputWords): string {
  return makePrintable(`${[input, line].filter((part) => part !== undefined).join(":")}: ${said.recordUnjudged}`);
}

function isFailure({ findings, judged }: Assessment, level: string): boolean {
  if (level === "never") return false;
  const order: readonly string[] = CONSEQUENCES;
  return !judged || findings.some(({ consequence }) => order.indexOf(consequence) >= order.indexOf(level));
}

function describeEmpty(inputs: readonly string[], { notRead }: VerdictCounts, said: InputWords): string {
  if (notRead > 0) return said.nothingReadable;
  const named = inputs.map((input) => (input === "-" ? said.standardInput : `\`${makePrintable(input)}\``));
  return said.holdNone(named);
}
