import type { Command } from "./command.js";

/** `tenbar explain`: what a code means, why it matters and how it is mended. */
export const EXPLAIN: Command = {
  name: "explain",
  usage: "tenbar explain [CODE]",
  summary: "say what a code means, and how to mend it",
  about:
    "Shows the page of a code, of a diagnostic or of a finding: what it means, why it matters, how to mend it, and an example of each. Takes the reason of an undecided result as well, and every word that an assessment says: an outcome, a verdict, a consequence. Without a code it lists them all. On a screen it is shown by the program in PAGER, or by less.",
  arguments: [
    {
      name: "CODE",
      help: "such as plan/unknown-name, hold/drop-outside, start-too-low or undecided",
      isOptional: true,
    },
  ],
  options: [],
  examples: [
    "tenbar explain",
    "tenbar explain plan/unknown-name",
    "tenbar explain start-too-low",
    "tenbar explain undecided",
  ],
  exitCodes: ["done", "never given", "there is no such code, or its page is not there"],
  run: async (...given) => (await import("./program.js")).runExplain(...given),
};
