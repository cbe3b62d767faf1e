#!/usr/bin/env node
import { run } from "./run.js";
import type { Streams } from "./streams.js";

/** The process as a command may know it: its streams, its screen, the day of its clock. */
function openStreams(): Streams {
  const gone = new AbortController();
  process.stdout.on("error", () => {
    // Why: whoever read the report has gone, as `head` does; that is no failure of ours.
    gone.abort();
  });
  const write = (text: string): Promise<boolean> =>
    gone.signal.aborted
      ? Promise.resolve(false)
      : new Promise((resolve) => {
          process.stdout.write(text, (error) => resolve(error === null || error === undefined));
        });
  const now = new Date();
  const pad = (number: number) => String(number).padStart(2, "0");
  return {
    out: write,
    error: (text) => void process.stderr.write(text),
    input: process.stdin,
    isTerminal: process.stdout.isTTY,
    columns: process.stdout.columns,
    environment: process.env,
    today: `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`,
  };
}

run(process.argv.slice(2), openStreams()).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(`a fault of tenbar itself, please report it: ${message}\n`);
    process.exitCode = 2;
  },
);
