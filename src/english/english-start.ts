import type { StartWords } from "../words/index.js";

/** What the start of the program says where no other language is asked for. */
export const ENGLISH_START: StartWords = {
  noCommand: (word, nearest) => `there is no command \`${word}\`${offerNearest(nearest)}`,
  noOption: (word, nearest) => `there is no option \`${word}\`${offerNearest(nearest)}`,
  moreHelp: (command) => `\`${command} --help\` tells more`,
};

/** What stands behind a word that is not known. */
export function offerNearest(nearest: string | undefined): string {
  return nearest === undefined ? "" : `; did you mean \`${nearest}\`?`;
}
