import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "../../src/cli/run.js";
import type { ExitCode, Streams } from "../../src/cli/streams.js";

export interface ProgramRun {
  readonly code: ExitCode;
  readonly out: string;
  readonly error: string;
}

interface Given {
  readonly input?: string | Uint8Array;
  /** How many times standard output takes a text before its reader goes. */
  readonly takes?: number;
  readonly streams?: Partial<Streams>;
}

/** Runs the program in this process on streams that a test can read. */
export async function runProgram(
  words: readonly string[],
  { input = "", takes, streams }: Given = {},
): Promise<ProgramRun> {
  const out: string[] = [];
  const error: string[] = [];
  const code = await run(words, {
    out: (text) => {
      if (takes !== undefined && out.length >= takes) return Promise.resolve(false);
      out.push(text);
      return Promise.resolve(true);
    },
    error: (text) => void error.push(text),
    input: streamBytes(input),
    isTerminal: false,
    isErrorTerminal: false,
    columns: undefined,
    environment: {},
    today: "2026-04-12",
    ...streams,
  });
  return { code, out: out.join(""), error: error.join("") };
}

/** The bytes in chunks of seven, so that characters and lines are cut anywhere. */
export async function* streamBytes(input: string | Uint8Array): AsyncGenerator<Uint8Array, void, undefined> {
  const bytes = typeof input === "string" ? new TextEncoder().encode(input) : input;
  const size = bytes.length > 10_000 ? 65_536 : 7;
  for (let start = 0; start < bytes.length; start += size) yield bytes.subarray(start, start + size);
}

/** A folder of its own for a test file; `put` writes a file in it and gives its path. */
export function makeFolder() {
  const folder = mkdtempSync(join(tmpdir(), "tenbar-cli-"));
  return {
    folder,
    put(name: string, content: string | Uint8Array): string {
      const path = join(folder, name);
      writeFileSync(path, content);
      return path;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
