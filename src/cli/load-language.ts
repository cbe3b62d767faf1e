import { english } from "../english/index.js";
import type { Catalogue } from "../words/index.js";

/** The catalogue of a language, else English; another is loaded only where it is asked for. */
export async function loadLanguage(language: string | undefined): Promise<Catalogue> {
  if (language === "de") return (await import("./german-words.js")).german;
  return english;
}
