import { makePrintable } from "../report/index.js";
import { COMMON_OPTIONS, type Command } from "./command.js";
import { renderCommandHelp } from "./help.js";
import { readArguments } from "./read-arguments.js";
import { readLooks } from "./read-looks.js";
import { refuse } from "./refuse.js";
import type { ExitCode, Streams } from "./streams.js";

/** Runs one command on the words behind its name. */
export async function runCommand(command: Command, words: readonly string[], streams: Streams): Promise<ExitCode> {
  const given = readArguments(words, [...command.options, ...COMMON_OPTIONS]);
  if ("problem" in given) return refuse(given.problem, command.name, streams);
  if (given.switches.has("help")) {
    await streams.out(renderCommandHelp(command));
    return 0;
  }
  const problem = findMiscount(given.positionals, command);
  if (problem !== undefined) return refuse(problem, command.name, streams);
  try {
    return await command.run(given, streams, await readLooks(given, streams));
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
