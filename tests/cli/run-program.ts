import { run } from "../../src/cli/run.js";
import type { Streams } from "../../src/cli/streams.js";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** Runs the program in this process, with streams of its own. */
export async function runProgram(
  words: readonly string[],
  given: Partial<Streams> & { readonly stdin?: string } = {},
): Promise<Ran> {
  let out = "";
  let error = "";
  async function* input() {
    if (given.stdin !== undefined) yield new TextEncoder().encode(given.stdin);
  }
  const code = await run(words, {
    out: async (text) => {
      out += text;
      return true;
    },
    error: (text) => {
      error += text;
    },
    input: input(),
    isTerminal: false,
    isErrorTerminal: false,
    columns: 80,
    environment: {},
    today: "2026-04-12",
    ...given,
  });
  return { code, out, error };
}
