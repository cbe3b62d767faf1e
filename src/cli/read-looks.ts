import type { Catalogue } from "../words/index.js";
import type { Looks } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { Streams } from "./streams.js";

const NARROWEST = 40;
const WIDEST = 100;
const USUAL_WIDTH = 80;

/** `NO_COLOR` (no-color.org) and a screen that is none take colour away; `--color` has the last word. */
export function readLooks(given: ReadArguments, streams: Streams, words: Catalogue): Looks {
  const { isTerminal, isErrorTerminal, columns, environment } = streams;
  const when = given.values.get("color") ?? "auto";
  const isPlain = (environment["NO_COLOR"] ?? "") !== "" || environment["TERM"] === "dumb";
  const color = (isScreen: boolean) => when === "always" || (when === "auto" && isScreen && !isPlain);
  const width = Math.max(NARROWEST, Math.min(columns ?? USUAL_WIDTH, WIDEST));
  return {
    out: { color: color(isTerminal), width, words },
    error: { color: color(isErrorTerminal), width, words },
    words,
  };
}
