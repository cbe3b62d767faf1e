import { wrapText } from "../report/index.js";
import { COMMON_OPTIONS, type Command } from "./command.js";
import type { OptionSpec } from "./read-arguments.js";

const WIDTH = 80;
const COLUMN = 24;
const ABOUT =
  "tenbar evaluates records of breathing-apparatus checks against a brigade's own policy, a YAML file that states its tolerances and check sequences. It decides nothing: local procedure, the manufacturer's instructions and the competent person stand above every output.";
const EXAMPLES = [
  "tenbar compile policy.yaml",
  "tenbar evaluate policy.yaml record.json",
  "tenbar evaluate policy.yaml records.ndjson --format ndjson --fail-on withdraw",
] as const;
const EXIT_CODES = [
  "done, and nothing to act on",
  "a finding to act on, or a record that could not be judged",
  "could not run, an input could not be read, a policy has errors, or there was no record",
] as const;

/** The help of the program: what it does, its commands, where to go on. */
export function renderProgramHelp(commands: readonly Command[]): string {
  return [
    ...wrapText(ABOUT, WIDTH, ""),
    "",
    "usage: tenbar COMMAND ARGUMENTS",
    "",
    "commands:",
    ...commands.map(({ name, summary }) => `  ${name.padEnd(10)}${summary}`),
    "",
    "options:",
    ...renderRow("--help", "show this help; after a command, the help of that command"),
    ...renderRow("--version", "show the version"),
    "",
    ...renderExamples(EXAMPLES),
    "",
    ...renderExitCodes(EXIT_CODES),
    "",
  ].join("\n");
}

/** The help of one command. */
export function renderCommandHelp(command: Command): string {
  const { usage, about, options, examples, exitCodes } = command;
  return [
    `usage: ${usage}`,
    "",
    ...wrapText(about, WIDTH, ""),
    "",
    "arguments:",
    ...command.arguments.flatMap(({ name, help }) => renderRow(name, help)),
    "",
    "options:",
    ...[...options, ...COMMON_OPTIONS].flatMap(renderOption),
    "",
    ...renderExamples(examples),
    "",
    ...renderExitCodes(exitCodes),
    "",
  ].join("\n");
}

function renderOption({ name, value, help }: OptionSpec): readonly string[] {
  return renderRow(`--${name}${value === undefined ? "" : ` ${value}`}`, help);
}

function renderRow(head: string, help: string): readonly string[] {
  return wrapText(help, WIDTH, " ".repeat(COLUMN), `  ${head}`.padEnd(COLUMN));
}

function renderExamples(examples: readonly string[]): readonly string[] {
  return ["examples:", ...examples.map((example) => `  ${example}`)];
}

function renderExitCodes(exitCodes: readonly string[]): readonly string[] {
  return ["exit codes:", ...exitCodes.flatMap((line, code) => wrapText(line, WIDTH, "     ", `  ${code}  `))];
}
