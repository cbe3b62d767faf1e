import { ENGLISH_REPORTS } from "../english/index.js";
import type { ReportWords } from "../words/index.js";

/** How a report is to look. Meaning never hangs on colour alone. */
export interface ReportOptions {
  readonly color: boolean;
  /** Columns. */
  readonly width: number;
  /** The language; English where none is given. */
  readonly words?: ReportWords | undefined;
}

/** The words of a report that is to look so. */
export function wordsOf({ words = ENGLISH_REPORTS }: ReportOptions): ReportWords {
  return words;
}

type Tone = "bad" | "warn" | "good" | "dim" | "strong";

/** ECMA-48 graphic renditions, by number. */
const RENDITIONS: Readonly<Record<Tone, number>> = { bad: 31, warn: 33, good: 32, dim: 2, strong: 1 };

export type Paint = (tone: Tone, text: string) => string;

export function createPaint({ color }: ReportOptions): Paint {
  if (!color) return (_tone, text) => text;
  return (tone, text) => `\u001B[${RENDITIONS[tone]}m${text}\u001B[0m`;
}
