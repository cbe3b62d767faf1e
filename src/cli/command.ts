import type { ReportOptions } from "../report/index.js";
import type { OptionSpec, ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

/** A command of the program, with all that its help shows. */
export interface Command {
  readonly name: string;
  readonly usage: string;
  readonly summary: string;
  readonly about: string;
  readonly options: readonly OptionSpec[];
  readonly examples: readonly string[];
  readonly exitCodes: readonly string[];
  /** How many arguments stand behind the command, at least and at most. */
  readonly operands: readonly [number, number];
  run(given: ReadArguments, streams: Streams, report: ReportOptions): Promise<ExitCode>;
}

export const COMMON_OPTIONS: readonly OptionSpec[] = [
  {
    name: "color",
    value: "WHEN",
    values: ["auto", "always", "never"],
    help: "colour: auto (the default), always or never",
  },
  { name: "help", help: "show this help" },
];

/** `NO_COLOR` (no-color.org) and a screen that is none take colour away; `--color` has the last word. */
export function readReportOptions(given: ReadArguments, { isTerminal, columns, environment }: Streams): ReportOptions {
  const when = given.values.get("color") ?? "auto";
  const noColor = (environment.NO_COLOR ?? "") !== "";
  const color = when === "always" || (when === "auto" && isTerminal && !noColor);
  return { color, width: Math.max(40, Math.min(columns ?? 80, 100)) };
}
