import { wrapText } from "../report/index.js";
import { COMMON_OPTIONS, type Command } from "./command.js";
import type { OptionSpec } from "./read-arguments.js";

const WIDTH = 80;
const ABOUT =
  "tenbar evaluates records of breathing-apparatus checks against a brigade's own policy, a YAML file that states its tolerances and check sequences. It decides nothing: local procedure, the manufacturer's instructions and the competent person stand above every output.";

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
    "`tenbar COMMAND --help` tells more of one; `tenbar --version` names the version.",
    "",
  ].join("\n");
}

/** The help of one command. */
export function renderCommandHelp({ usage, about, options, examples, exitCodes }: Command): string {
  return [
    `usage: ${usage}`,
    "",
    ...wrapText(about, WIDTH, ""),
    "",
    "options:",
    ...[...options, ...COMMON_OPTIONS].flatMap(renderOption),
    "",
    "examples:",
    ...examples.map((example) => `  ${example}`),
    "",
    "exit codes:",
    ...exitCodes.flatMap((line, code) => {
      const [first = "", ...others] = wrapText(line, WIDTH, "     ");
      return [`  ${code}  ${first.trimStart()}`, ...others];
    }),
    "",
  ].join("\n");
}

function renderOption({ name, value, help }: OptionSpec): readonly string[] {
  const head = `  --${name}${value === undefined ? "" : ` ${value}`}`;
  const [first = "", ...others] = wrapText(help, WIDTH, " ".repeat(24));
  return [`${head.padEnd(24)}${first.trimStart()}`, ...others];
}
