import { findNearest } from "../diagnostics/index.js";
import { ENGINE_VERSION } from "../index.js";
import { makePrintable } from "../report/index.js";
import { COMMON_OPTIONS, type Command, readReportOptions } from "./command.js";
import { COMPILE } from "./compile-command.js";
import { DESCRIBE, SCHEMA } from "./describe-command.js";
import { EVALUATE } from "./evaluate-command.js";
import { renderCommandHelp, renderProgramHelp } from "./help.js";
import { readArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

const COMMANDS: readonly Command[] = [COMPILE, EVALUATE, DESCRIBE, SCHEMA];

/** Runs the program on its arguments; everything that it knows of the world comes with the streams. */
export async function run(words: readonly string[], streams: Streams): Promise<ExitCode> {
  const [first, ...rest] = words;
  if (first === undefined || first === "--help" || first === "help") {
    await streams.out(renderProgramHelp(COMMANDS));
    return first === undefined ? 2 : 0;
  }
  if (first === "--version") {
    await streams.out(`${ENGINE_VERSION}\n`);
    return 0;
  }
  const command = COMMANDS.find(({ name }) => name === first);
  if (command === undefined) {
    const nearest = findNearest(
      first,
      COMMANDS.map(({ name }) => name),
    );
    return refuse(
      `there is no command \`${first}\`${nearest === undefined ? "" : `; did you mean \`${nearest}\`?`}`,
      "",
      streams,
    );
  }
  const given = readArguments(rest, [...command.options, ...COMMON_OPTIONS]);
  if ("problem" in given) return refuse(given.problem, command.name, streams);
  if (given.switches.has("help")) {
    await streams.out(renderCommandHelp(command));
    return 0;
  }
  const [least, most] = command.operands;
  if (given.positionals.length < least || given.positionals.length > most) {
    return refuse(`usage: ${command.usage}`, command.name, streams);
  }
  return command.run(given, streams, readReportOptions(given, streams));
}

function refuse(problem: string, command: string, { error }: Streams): ExitCode {
  error(`${makePrintable(problem)}\n\`tenbar ${command === "" ? "" : `${command} `}--help\` tells more\n`);
  return 2;
}
