import { LANGUAGES } from "./command.js";

/**
 * The language that the arguments ask for, whatever else is wrong with them; undefined where none is asked for, or what is
 * said of the language is itself wrong.
 */
export function findLanguage(words: readonly string[]): string | undefined {
  const end = words.indexOf("--");
  const own = end === -1 ? words : words.slice(0, end);
  const asked = own.flatMap((word, index) => {
    if (word === "--language") return [own[index + 1]];
    return word.startsWith("--language=") ? [word.slice("--language=".length)] : [];
  });
  return asked.length === 1 ? LANGUAGES.find((language) => language === asked[0]) : undefined;
}
