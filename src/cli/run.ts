import { ENGLISH_START } from "../english/index.js";
import { ENGINE_VERSION } from "../index.js";
import { findNearest } from "../terms/index.js";
import type { StartWords } from "../words/index.js";
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
  if (command === undefined) return refuseUnknown(name ?? "", words, commands, streams);
  const rest = second === undefined ? [] : [second, ...others];
  // Why: the help and the version of the program are there at once, without what only a command needs.
  const { runCommand } = await import("./program.js");
  return runCommand(command, asksHelp ? ["--help"] : rest, streams);
}

async function refuseUnknown(
  word: string,
  words: readonly string[],
  commands: readonly Command[],
  streams: Streams,
): Promise<ExitCode> {
  const start = await loadStart(words);
  const nearestOf = (known: readonly string[]) => findNearest(word, known);
  const problem = word.startsWith("-")
    ? start.noOption(word, nearestOf(["--help", "--version"]))
    : start.noCommand(word, nearestOf(commands.map(({ name }) => name)));
  return refuse(problem, "", start, streams);
}

/** Why: English is there at once, so that a mistyped command loads nothing; other languages come with the program. */
async function loadStart(words: readonly string[]): Promise<StartWords> {
  if (!words.some((word) => word.startsWith("--language"))) return ENGLISH_START;
  const { findLanguage, loadLanguage } = await import("./program.js");
  return (await loadLanguage(findLanguage(words))).program.start;
}
