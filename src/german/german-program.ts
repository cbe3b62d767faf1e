import { type ProgramWords, quoteWords } from "../words/index.js";

export const GERMAN_PROGRAM: ProgramWords = {
  start: {
    noCommand: (word, nearest) => `den Befehl \`${word}\` gibt es nicht${offerNearest(nearest)}`,
    noOption: (word, nearest) => `die Option \`${word}\` gibt es nicht${offerNearest(nearest)}`,
    moreHelp: (command) => `mehr dazu sagt \`${command} --help\``,
  },
  arguments: {
    twice: (option) => `\`${option}\` ist zweimal angegeben`,
    noValue: (option) => `\`${option}\` nimmt keinen Wert`,
    needs: (option, value) => `\`${option}\` verlangt ${value}`,
    needsJoined: (option, value, given) =>
      `\`${option}\` verlangt ${value}; was mit \`-\` beginnt, wird \`${option}=${given}\` geschrieben`,
    noneOf: (given, values, nearest) => `\`${given}\` ist keines von ${values.join(", ")}${offerNearest(nearest)}`,
    noDay: (given) => `\`${given}\` ist kein Tag wie 2026-04-01`,
    noTime: (given) => `\`${given}\` ist keine Zeit wie 2026-04-12 oder 2026-04-12T07:04:00+01:00`,
    missing: (name, usage) => `${name} fehlt; Aufruf: ${usage}`,
    surplus: (word, usage) => `\`${word}\` ist ein Argument zu viel; Aufruf: ${usage}`,
    inputTwice: "`-` ist zweimal genannt; die Standardeingabe wird einmal gelesen",
    noCheck: (check, known, nearest) =>
      `die Richtlinie hat keine Prüfung \`${check}\`; sie hat ${known.join(", ")}${offerNearest(nearest)}`,
  },
  inputs: {
    notJudged: (problem) => `${problem}; nicht beurteilt`,
    recordUnjudged: "das Protokoll ließ sich nicht beurteilen",
    noRecord: (why) => `kein Protokoll wurde beurteilt: ${why}`,
    nothingReadable: "was angegeben ist, ließ sich nicht lesen",
    standardInput: "die Standardeingabe",
    holdNone: (names) => `${names.join(", ")} ${names.length === 1 ? "enthält" : "enthalten"} keines`,
    wholeRecord: "das ist ein ganzes Protokoll; was darin unter `subject` steht, in eine Datei schreiben",
    noSubject: "ein Prüfgegenstand ist ein JSON-Objekt",
  },
  stations: {
    nothingDepends: "Hinweis: in der Richtlinie hängt nichts von einer Wache ab",
    unknown: (station, named, nearest) =>
      `Hinweis: die Richtlinie sagt nichts von einer Wache \`${station}\`; sie nennt ${quoteWords(named)}${offerNearest(nearest)}`,
    withoutTime: "Hinweis: ohne `--at` gilt keine Ausnahme, also auch keine der Wache",
  },
  planSaved: "der Plan ist gespeichert",
  planNotSaved: (why) => `der Plan wurde nicht gespeichert: ${why}`,
  reportNotWritten: (why) => `der Bericht ließ sich nicht schreiben: ${why}`,
  ownFault: (message) => `ein Fehler von tenbar selbst, bitte melden: ${message}`,
};

function offerNearest(nearest: string | undefined): string {
  return nearest === undefined ? "" : `; ist \`${nearest}\` gemeint?`;
}
