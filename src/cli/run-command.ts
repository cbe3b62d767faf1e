import { makePrintable } from "../report/index.js";
import type { ArgumentWords } from "../words/index.js";
import { COMMON_OPTIONS, type Command, LANGUAGE_OPTION } from "./command.js";
import { findLanguage } from "./find-language.js";
import { renderCommandHelp } from "./help.js";
import { loadLanguage } from "./load-language.js";
import { readArguments } from "./read-arguments.js";
import { readLooks } from "./read-looks.js";
import { refuse } from "./refuse.js";
import type { ExitCode, Streams } from "./streams.js";

/** Runs one command on the words behind its name. */
export async function runCommand(command: Command, words: readonly string[], streams: Streams): Promise<ExitCode> {
  // Why: to a command that speaks one language, to ask for another is the mistake that it tells of. By its name, since the start of
  // the program and the rest of it are built apart, each with an option of its own.
  const isAsked = command.options.some(({ name }) => name === LANGUAGE_OPTION.name);
  const catalogue = await loadLanguage(isAsked ? findLanguage(words) : undefined);
  const { program } = catalogue;
  const given = readArguments(words, [...command.options, ...COMMON_OPTIONS], program);
  if ("problem" in given) return refuse(given.problem, command.name, program.start, streams);
  if (given.switches.has("help")) {
    await streams.out(renderCommandHelp(command));
    return 0;
  }
  const problem = findMiscount(given.positionals, command, program.arguments);
  if (problem !== undefined) return refuse(problem, command.name, program.start, streams);
  try {
    return await command.run(given, streams, readLooks(given, streams, catalogue));
  } catch (error) {
    // Why: what is expected to fail comes back as a value; whatever is thrown is a mistake of this program.
    const message = error instanceof Error ? error.message : String(error);
    streams.error(`${program.ownFault(makePrintable(message))}\n`);
    return 2;
  }
}

/** Too few arguments, too many, or standard input asked for twice. */
function findMiscount(positionals: readonly string[], command: Command, said: ArgumentWords): string | undefined {
  const wanted = command.arguments;
  const missing = wanted[positionals.length];
  if (missing !== undefined && missing.isOptional !== true)
    return said.missing(missing.name.replace("...", ""), command.usage);
  const surplus = wanted.at(-1)?.name.endsWith("...") === true ? undefined : positionals[wanted.length];
  if (surplus !== undefined) return said.surplus(surplus, command.usage);
  if (positionals.filter((word) => word === "-").length > 1) return said.inputTwice;
  return undefined;
}
