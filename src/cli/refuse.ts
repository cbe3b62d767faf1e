import { makePrintable } from "../report/index.js";
import type { StartWords } from "../words/index.js";
import type { ExitCode, Streams } from "./streams.js";

/** Says why nothing was run, and where help is; `command` is empty where none was recognized. */
export function refuse(problem: string, command: string, words: StartWords, { error }: Streams): ExitCode {
  error(`${makePrintable(problem)}\n${words.moreHelp(command === "" ? "tenbar" : `tenbar ${command}`)}\n`);
  return 2;
}
