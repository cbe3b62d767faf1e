import { ENGINE_VERSION } from "../index.js";
import { findNearest } from "../terms/index.js";
import type { Command } from "./command.js";
import { COMPILE } from "./compile-command.js";
import { DESCRIBE, SCHEMA } from "./describe-command.js";
import { EVALUATE } from "./evaluate-command.js";
import { EXPLAIN } from "./explain-command.js";
import { renderProgramHelp } from "./help.js";
import { refuse } from "./refuse.js";
import type { ExitCode, Streams } from "./streams.js";

const COMMANDS: readonly Command[] = [COMPILE, EVALUATE, DESCRIBE, SCHEMA, EXPLAIN];

/** Runs the program on its arguments; everything that it knows of the world comes with the streams. */
export async function run(
  words: readonly string[],
  streams: Streams,
  commands: readonly Command[] = COMMANDS,
): Promise<ExitCode> {
  const [first, second, ...others] = words;
  if (first === undefined) {
    streams.error(renderProgramHelp(commands));
    return 2;
  }
  if (first === "--version") {
    await streams.out(`${ENGINE_VERSION}\n`);
    return 0;
  }
  const asksHelp = first === "--help" || first === "help";
  if (asksHelp && second === undefined) {
    await streams.out(renderProgramHelp(commands));
    return 0;
  }
  const name = asksHelp ? second : first;
  const command = commands.find((one) => one.name === name);
  if (command === undefined) return refuse(describeUnknown(name ?? "", commands), "", streams);
  const rest = second === undefined ? [] : [second, ...others];
  // Why: the help and the version of the program are there at once, without what only a command needs.
  const { runCommand } = await import("./program.js");
  return runCommand(command, asksHelp ? ["--help"] : rest, streams);
}

function describeUnknown(word: string, commands: readonly Command[]): string {
  const isOption = word.startsWith("-");
  const known = isOption ? ["--help", "--version"] : commands.map(({ name }) => name);
  const nearest = findNearest(word, known);
  const hint = nearest === undefined ? "" : `; did you mean \`${nearest}\`?`;
  return `there is no ${isOption ? "option" : "command"} \`${word}\`${hint}`;
}
