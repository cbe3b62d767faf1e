import { makePrintable } from "../report/index.js";
import type { ExitCode, Streams } from "./streams.js";

/** Says why nothing was run, and where help is; `command` is empty where none was recognized. */
export function refuse(problem: string, command: string, { error }: Streams): ExitCode {
  error(`${makePrintable(problem)}\n\`tenbar ${command === "" ? "" : `${command} `}--help\` tells more\n`);
  return 2;
}
