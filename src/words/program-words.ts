/** All that the start of the program says; `nearest` is the known word that was probably meant. */
export interface StartWords {
  noCommand(word: string, nearest: string | undefined): string;
  noOption(word: string, nearest: string | undefined): string;
  /** `command` with the name of the program, `tenbar compile`. */
  moreHelp(command: string): string;
}

/** What is wrong with the arguments of a command; each option as it was typed, with its hyphens. */
export interface ArgumentWords {
  twice(option: string): string;
  noValue(option: string): string;
  /** `value`: what stands for it in the help, `FILE`. */
  needs(option: string, value: string): string;
  needsJoined(option: string, value: string, given: string): string;
  noneOf(given: string, values: readonly string[], nearest: string | undefined): string;
  noDay(given: string): string;
  noTime(given: string): string;
  missing(name: string, usage: string): string;
  surplus(word: string, usage: string): string;
  readonly inputTwice: string;
  noCheck(check: string, known: readonly string[], nearest: string | undefined): string;
}

/** Why records and subjects were not judged. */
export interface InputWords {
  /** Behind what is wrong with a record. */
  notJudged(problem: string): string;
  readonly recordUnjudged: string;
  noRecord(why: string): string;
  readonly nothingReadable: string;
  readonly standardInput: string;
  /** `names` in backticks, or {@link standardInput}. */
  holdNone(names: readonly string[]): string;
  readonly wholeRecord: string;
  readonly noSubject: string;
}

/** Notes on a station for which a check is described. */
export interface StationWords {
  readonly nothingDepends: string;
  unknown(station: string, named: readonly string[], nearest: string | undefined): string;
  readonly withoutTime: string;
}

/** Everything that the command line says beside reports and help. */
export interface ProgramWords {
  readonly start: StartWords;
  readonly arguments: ArgumentWords;
  readonly inputs: InputWords;
  readonly stations: StationWords;
  readonly planSaved: string;
  planNotSaved(why: string): string;
  reportNotWritten(why: string): string;
  ownFault(message: string): string;
}
