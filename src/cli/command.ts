import { english } from "../english/index.js";
import { german } from "../german/index.js";
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

/** How reports are to look on the two streams. */
export interface Looks {
  readonly out: ReportOptions;
  readonly error: ReportOptions;
}

/** A command of the program, with all that its help shows. */
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

const LANGUAGES: Readonly<Record<string, Catalogue>> = { en: english, de: german };

export const LANGUAGE_OPTION: OptionSpec = {
  name: "language",
  value: "LANGUAGE",
  values: Object.keys(LANGUAGES),
  help: "the language of messages and reports: en (the default) or de; codes and figures stay as they are",
};

/** The catalogue that `--language` asks for, else English. */
export function readLanguage({ values }: ReadArguments): Catalogue {
  return LANGUAGES[values.get("language") ?? "en"] ?? english;
}

export const COMMON_OPTIONS: readonly OptionSpec[] = [
  {
    name: "color",
    value: "WHEN",
    values: ["auto", "always", "never"],
    help: "colour: auto (on a screen, unless NO_COLOR is set; the default), always or never",
  },
  { name: "help", help: "show this help" },
];

const NARROWEST = 40;
const WIDEST = 100;
const USUAL_WIDTH = 80;

/** `NO_COLOR` (no-color.org) and a screen that is none take colour away; `--color` has the last word. */
export function readLooks(given: ReadArguments, streams: Streams): Looks {
  const { isTerminal, isErrorTerminal, columns, environment } = streams;
  const when = given.values.get("color") ?? "auto";
  const isPlain = (environment["NO_COLOR"] ?? "") !== "" || environment["TERM"] === "dumb";
  const color = (isScreen: boolean) => when === "always" || (when === "auto" && isScreen && !isPlain);
  const width = Math.max(NARROWEST, Math.min(columns ?? USUAL_WIDTH, WIDEST));
  const words = readLanguage(given);
  return { out: { color: color(isTerminal), width, words }, error: { color: color(isErrorTerminal), width, words } };
}
