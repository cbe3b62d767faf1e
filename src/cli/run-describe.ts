import { parseJson, readText } from "../files/index.js";
import { type Catalogue, describeCheck, type Policy, recordSchema } from "../index.js";
import { loadPolicy } from "../node.js";
import { parseRecordTime } from "../quantities/index.js";
import { makePrintable, renderDiagnostics } from "../report/index.js";
import { findNearest } from "../terms/index.js";
import type { StationWords } from "../words/index.js";
import type { Looks } from "./command.js";
import { listStations } from "./list-stations.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

const MOST_BYTES = 8 * 1024 * 1024;

/** Prints the steps of a check as a form. */
export async function runDescribe(given: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode> {
  const { positionals, values } = given;
  const { words } = looks;
  const [path = "", check = ""] = positionals;
  const at = values.get("at");
  const station = values.get("station");
  // Why: a day that cannot be read would describe the check as on no day at all.
  if (at !== undefined && parseRecordTime(at) === undefined) {
    streams.error(`${makePrintable(words.program.arguments.noTime(`--at ${at}`))}\n`);
    return 2;
  }
  const policy = await load(path, streams, looks, words);
  if (policy === undefined) return 2;
  const file = values.get("subject");
  if (file === "-" && path === "-") {
    streams.error(`${words.program.arguments.inputTwice}\n`);
    return 2;
  }
  const subject = file === undefined ? {} : await readSubject(file, streams, looks);
  if (subject === undefined) return 2;
  const circumstances = {
    words,
    ...(at === undefined ? {} : { at }),
    ...(station === undefined ? {} : { station }),
  };
  if (station !== undefined) noteStation(station, at, policy, words.program.stations, streams);
  return print(describeCheck(policy, check, subject, circumstances), check, policy, words, streams);
}

/** Why: a station that nothing is for is no mistake, yet a name that was miswritten looks like one. */
function noteStation(
  station: string,
  at: string | undefined,
  { plan }: Policy,
  said: StationWords,
  { error }: Streams,
): void {
  const { named, isRead } = listStations(plan);
  if (named.length === 0 && !isRead) error(`${said.nothingDepends}\n`);
  else if (!named.includes(station.trim()) && !isRead) {
    error(`${makePrintable(said.unknown(station, named, findNearest(station, named)))}\n`);
  }
  if (at === undefined) error(`${said.withoutTime}\n`);
}

/** Prints the JSON Schema of a check's records. */
export async function runSchema({ positionals }: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode> {
  const [path = "", check = ""] = positionals;
  const policy = await load(path, streams, looks);
  return policy === undefined ? 2 : print(recordSchema(policy, check), check, policy, looks.words, streams);
}

async function load(path: string, streams: Streams, looks: Looks, words?: Catalogue): Promise<Policy | undefined> {
  const { policy, diagnostics, problem } = await loadPolicy(path, { standardInput: streams.input, words });
  if (problem !== undefined) streams.error(`${makePrintable(path)}: ${makePrintable(problem)}\n`);
  if (diagnostics.length > 0) streams.error(`${renderDiagnostics(diagnostics, looks.error)}\n`);
  return policy;
}

async function readSubject(
  file: string,
  streams: Streams,
  { words }: Looks,
): Promise<Readonly<Record<string, unknown>> | undefined> {
  const read = await readText(file, streams.input, MOST_BYTES, words.files);
  const parsed = "problem" in read ? read : parseJson(read.text, words.files.json);
  if ("problem" in parsed) {
    streams.error(makePrintable(`${file}: ${parsed.problem}`).concat("\n"));
    return undefined;
  }
  const { value } = parsed;
  // Why: taken for a subject, a whole record states no fact, and every step would look open for no reason that is told.
  if (typeof value === "object" && value !== null && "subject" in value && "steps" in value) {
    streams.error(`${makePrintable(file)}: ${words.program.inputs.wholeRecord}\n`);
    return undefined;
  }
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return { ...value };
  streams.error(`${makePrintable(file)}: ${words.program.inputs.noSubject}\n`);
  return undefined;
}

async function print(
  value: object | undefined,
  check: string,
  policy: Policy,
  { program }: Catalogue,
  streams: Streams,
): Promise<ExitCode> {
  if (value !== undefined) {
    await streams.out(`${JSON.stringify(value, undefined, 2)}\n`);
    return 0;
  }
  const known = policy.plan.checks.map((one) => one.check);
  streams.error(`${makePrintable(program.arguments.noCheck(check, known, findNearest(check, known)))}\n`);
  return 2;
}
