#!/usr/bin/env node
import { run } from "./run.js";
import type { Streams } from "./streams.js";

/** The process as a command may know it: its streams, its screen, the day of its clock. */
function openStreams(output: AbortController): Streams {
  process.stdout.on("error", (error) => output.abort(error));
  process.stderr.on("error", () => undefined);
  const now = new Date();
  const pad = (number: number) => String(number).padStart(2, "0");
  return {
    out: (text) =>
      output.signal.aborted
        ? Promise.resolve(false)
        : new Promise((resolve) => {
            process.stdout.write(text, (error) => resolve(error === null || error === undefined));
          }),
    error: (text) => void process.stderr.write(text),
    page: async (text) => (await import("./program.js")).showInPager(text, process.env),
    input: openInput(),
    isTerminal: process.stdout.isTTY === true,
    isErrorTerminal: process.stderr.isTTY === true,
    columns: process.stdout.columns ?? process.stderr.columns,
    environment: process.env,
    today: `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`,
  };
}

/** Why: what opens it is loaded only by a command that reads it. */
async function* openInput(): AsyncGenerator<Uint8Array, void, undefined> {
  const { openStandardInput } = await import("./program.js");
  yield* openStandardInput(process.stdin);
}

/** Why: a reader that has gone, as `head` does, is no failure; a report that could not be written is one. */
async function describeLoss({ signal }: AbortController): Promise<string | undefined> {
  if (!signal.aborted) return undefined;
  const error: unknown = signal.reason;
  const isGone = typeof error === "object" && error !== null && "code" in error && error.code === "EPIPE";
  if (isGone) return undefined;
  const { describeFileError, findLanguage, loadLanguage } = await import("./program.js");
  const { files, program } = await loadLanguage(findLanguage(process.argv.slice(2)));
  return `${program.reportNotWritten(describeFileError(error, files))}\n`;
}

const output = new AbortController();
run(process.argv.slice(2), openStreams(output)).then(
  (code) => {
    // Why: the failure of the last write may be told after the write itself.
    setImmediate(async () => {
      const loss = await describeLoss(output);
      if (loss !== undefined) process.stderr.write(loss);
      process.exitCode = loss === undefined ? code : 2;
    });
  },
  (error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(`a fault of tenbar itself, please report it: ${message}\n`);
    process.exitCode = 2;
  },
);
