import type { ReportOptions } from "../report/index.js";
import type { Catalogue } from "../words/index.js";
import type { OptionSpec, ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

/** What stands behind the name of a command; `...` at the end of its name means one or more. */
export interface ArgumentSpec {
  readonly name: string;
  readonly help: string;
  readonly isOptional?: boolean;
}

/** How reports are to look on the two streams, and the language that they speak. */
export interface Looks {
  readonly out: ReportOptions;
  readonly error: ReportOptions;
  readonly words: Catalogue;
}

/** A command of the program, with all that its help shows; the code that does its work is loaded when it is run. */
export interface Command {
  readonly name: string;
  readonly usage: string;
  readonly summary: string;
  readonly about: string;
  readonly arguments: readonly ArgumentSpec[];
  readonly options: readonly OptionSpec[];
  readonly examples: readonly string[];
  readonly exitCodes: readonly string[];
  run(given: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode>;
}

export const POLICY_ARGUMENT: ArgumentSpec = {
  name: "POLICY",
  help: "a policy (YAML or JSON), or a plan that compile saved",
};

export const AS_OF_OPTION: OptionSpec = {
  name: "as-of",
  value: "DATE",
  isDate: true,
  help: "the day, 2026-04-01, against which a review date is compared",
};

export const LANGUAGES = ["en", "de"] as const;

export const LANGUAGE_OPTION: OptionSpec = {
  name: "language",
  value: "LANGUAGE",
  values: LANGUAGES,
  help: "the language of messages and reports: en (the default) or de; codes and figures stay as they are",
};

export const COMMON_OPTIONS: readonly OptionSpec[] = [
  {
    name: "color",
    value: "WHEN",
    values: ["auto", "always", "never"],
    help: "colour: auto (on a screen, unless NO_COLOR is set; the default), always or never",
  },
  { name: "help", help: "show this help" },
];
