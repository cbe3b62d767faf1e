import { type ProgramWords, quoteWords } from "../words/index.js";
import { ENGLISH_START, offerNearest } from "./english-start.js";

/** What the command line says where no other language is asked for. */
export const ENGLISH_PROGRAM: ProgramWords = {
  start: ENGLISH_START,
  arguments: {
    twice: (option) => `\`${option}\` is given twice`,
    noValue: (option) => `\`${option}\` takes no value`,
    needs: (option, value) => `\`${option}\` needs ${value}`,
    needsJoined: (option, value, given) =>
      `\`${option}\` needs ${value}; one that begins with \`-\` is written \`${option}=${given}\``,
    noneOf: (given, values, nearest) => `\`${given}\` is none of ${values.join(", ")}${offerNearest(nearest)}`,
    noDay: (given) => `\`${given}\` is no day such as 2026-04-01`,
    noTime: (given) => `\`${given}\` is no time such as 2026-04-12 or 2026-04-12T07:04:00+01:00`,
    missing: (name, usage) => `${name} is missing; usage: ${usage}`,
    surplus: (word, usage) => `\`${word}\` is one argument too many; usage: ${usage}`,
    inputTwice: "`-` is named twice; standard input is read once",
    noCheck: (check, known, nearest) =>
      `the policy has no check \`${check}\`; it has ${known.join(", ")}${offerNearest(nearest)}`,
  },
  inputs: {
    notJudged: (problem) => `${problem}; not judged`,
    recordUnjudged: "the record could not be judged",
    noRecord: (why) => `no record was evaluated: ${why}`,
    nothingReadable: "what was given could not be read",
    standardInput: "standard input",
    holdNone: (names) => `${names.join(", ")} ${names.length === 1 ? "holds" : "hold"} none`,
    wholeRecord: "it holds a whole record; write what stands under its `subject` to a file",
    noSubject: "a subject is a JSON object",
  },
  stations: {
    nothingDepends: "note: nothing in the policy depends on a station",
    unknown: (station, named, nearest) =>
      `note: the policy says nothing of a station \`${station}\`; it names ${quoteWords(named)}${offerNearest(nearest)}`,
    withoutTime: "note: no adoption applies without `--at`, and none of the station either",
  },
  planSaved: "the plan is saved",
  planNotSaved: (why) => `the plan was not saved: ${why}`,
  reportNotWritten: (why) => `the report could not be written: ${why}`,
  ownFault: (message) => `a fault of tenbar itself, please report it: ${message}`,
};
