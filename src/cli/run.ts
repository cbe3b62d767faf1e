import { findNearest } from "../diagnostics/index.js";
import { ENGINE_VERSION } from "../index.js";
import { makePrintable } from "../report/index.js";
import { COMMON_OPTIONS, type Command, readLooks } from "./command.js";
import { COMPILE } from "./compile-command.js";
import { DESCRIBE, SCHEMA } from "./describe-command.js";
import { EVALUATE } from "./evaluate-command.js";
import { EXPLAIN } from "./explain-command.js";
import { renderCommandHelp, renderProgramHelp } from "./help.js";
import { readArguments } from "./read-arguments.js";
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
  return runCommand(command, asksHelp ? ["--help"] : rest, streams);
}

function describeUnknown(word: string, commands: readonly Command[]): string {
  const isOption = word.startsWith("-");
  const known = isOption ? ["--help", "--version"] : commands.map(({ name }) => name);
  const nearest = findNearest(word, known);
  const hint = nearest === undefined ? "" : `; did you mean \`${nearest}\`?`;
  return `there is no ${isOption ? "option" : "command"} \`${word}\`${hint}`;
}

async function runCommand(command: Command, words: readonly string[], streams: Streams): Promise<ExitCode> {
  const given = readArguments(words, [...command.options, ...COMMON_OPTIONS]);
  if ("problem" in given) return refuse(given.problem, command.name, streams);
  if (given.switches.has("help")) {
    await streams.out(renderCommandHelp(command));
    return 0;
  }
  const problem = findMiscount(given.positionals, command);
  if (problem !== undefined) return refuse(problem, command.name, streams);
  try {
    return await command.run(given, streams, readLooks(given, streams));
  } catch (error) {
    // Why: what is expected to fail comes back as a value; whatever is thrown is a mistake of this program.
    const message = error instanceof Error ? error.message : String(error);
    streams.error(`a fault of tenbar itself, please report it: ${makePrintable(message)}\n`);
    return 2;
  }
}

/** Too few arguments, too many, or standard input asked for twice. */
function findMiscount(positionals: readonly string[], command: Command): string | undefined {
  const wanted = command.arguments;
  const missing = wanted[positionals.length];
  if (missing !== undefined && missing.isOptional !== true)
    return `${missing.name.replace("...", "")} is missing; usage: ${command.usage}`;
  const surplus = wanted.at(-1)?.name.endsWith("...") === true ? undefined : positionals[wanted.length];
  if (surplus !== undefined) return `\`${surplus}\` is one argument too many; usage: ${command.usage}`;
  if (positionals.filter((word) => word === "-").length > 1) return "`-` is named twice; standard input is read once";
  return undefined;
}

function refuse(problem: string, command: string, { error }: Streams): ExitCode {
  error(`${makePrintable(problem)}\n\`tenbar ${command === "" ? "" : `${command} `}--help\` tells more\n`);
  return 2;
}
