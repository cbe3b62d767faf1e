import { type CodePage, readCodePages, readWordPages } from "../files/index.js";
import { makePrintable, type ReportOptions, renderCodePage, summarizeCodePage, wrapText } from "../report/index.js";
import { findNearest } from "../terms/index.js";
import type { Looks } from "./command.js";
import type { ReadArguments } from "./read-arguments.js";
import type { ExitCode, Streams } from "./streams.js";

const REASONS = "reasons/";
const MOST_OFFERS = 5;

/** Shows the page of a code, or the list of all codes. */
export async function runExplain({ positionals }: ReadArguments, streams: Streams, looks: Looks): Promise<ExitCode> {
  const pages = readCodePages();
  if (pages.length === 0) {
    streams.error("the pages of the codes, docs/codes, are not in this package\n");
    return 2;
  }
  const [word] = positionals;
  if (word === undefined) return show(renderList(pages, looks.out), streams);
  const wordPages = readWordPages();
  const page =
    pages.find(({ code }) => code === word) ??
    pages.find(({ code }) => code === `${REASONS}${word}`) ??
    wordPages.find(({ code }) => code === word);
  if (page !== undefined) return show(renderCodePage(page.text, looks.out), streams);
  streams.error(
    `${makePrintable(describeUnknown(word, [...pages, ...wordPages]))}\n\`tenbar explain\` lists them all\n`,
  );
  return 2;
}

async function show(text: string, streams: Streams): Promise<ExitCode> {
  const isPaged = streams.isTerminal && (await streams.page?.(text)) === true;
  if (!isPaged) await streams.out(text);
  return 0;
}

function renderList(pages: readonly CodePage[], { width }: ReportOptions): string {
  const lines = pages.flatMap(({ code, text }) => {
    const name = shortenCode(code);
    const summary = wrapText(summarizeCodePage(text), width, "      ");
    return [name, ...summary];
  });
  return `${lines.join("\n")}\n`;
}

/** A code as it stands in reports: that of a reason is the reason itself. */
function shortenCode(code: string): string {
  return code.startsWith(REASONS) ? code.slice(REASONS.length) : code;
}

function describeUnknown(word: string, pages: readonly CodePage[]): string {
  const offers = listOffers(
    word,
    pages.map(({ code }) => shortenCode(code)),
  );
  const hint = offers.length === 0 ? "" : `; did you mean ${offers.map((code) => `\`${code}\``).join(" or ")}?`;
  return `there is no code \`${word}\`${hint}`;
}

/** Codes that end in the word; else those nearest to it, as a whole and by their ends. */
function listOffers(word: string, codes: readonly string[]): readonly string[] {
  const tails = codes.map(findTail);
  const endingIn = (tail: string | undefined) => codes.filter((_code, index) => tails[index] === tail);
  const ending = endingIn(word);
  if (ending.length > 0) return ending.slice(0, MOST_OFFERS);
  const offers = [findNearest(word, codes), ...endingIn(findNearest(findTail(word), tails))];
  return [...new Set(offers.filter((code) => code !== undefined))].slice(0, MOST_OFFERS);
}

function findTail(code: string): string {
  return code.slice(code.indexOf("/") + 1);
}
