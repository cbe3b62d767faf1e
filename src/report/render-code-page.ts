import { createPaint, type Paint, type ReportOptions } from "./palette.js";
import { wrapText } from "./wrap-text.js";

type Tone = Parameters<Paint>[0];

const HEAD = /^---\n([\s\S]*?)\n---\n/;
const HEADING_TONES: Readonly<Record<string, Tone>> = { Bad: "bad", Good: "good" };

/** A page of docs/codes for a screen: headings, paragraphs wrapped, examples as they are and indented. */
export function renderCodePage(page: string, options: ReportOptions): string {
  const paint = createPaint(options);
  const head = HEAD.exec(page)?.[1] ?? "";
  const facts = head.split("\n").filter((line) => line !== "" && !line.startsWith("code:"));
  const body = splitBlocks(page.replace(HEAD, "")).map((block) => renderBlock(block, facts, options, paint));
  return `${body.join("\n").trimEnd()}\n`;
}

/** The first sentence under `Means`. */
export function summarizeCodePage(page: string): string {
  const means = /\n## Means\n+([\s\S]*?)(?:\n\n|\n*$)/.exec(page)?.[1] ?? "";
  const text = means.replaceAll(/\s+/g, " ").trim();
  return /^(.*?[.!?])(?: [A-Z`]|$)/.exec(text)?.[1] ?? text;
}

type Block =
  | { readonly kind: "example"; readonly lines: readonly string[] }
  | { readonly kind: "text"; readonly text: string };

/** Paragraphs, headings and lists one by one; each fenced example whole. */
function splitBlocks(body: string): readonly Block[] {
  return body.split(/^(```[^\n]*\n[\s\S]*?\n```)$/m).flatMap((part): readonly Block[] => {
    if (part.startsWith("```")) return [{ kind: "example", lines: part.split("\n").slice(1, -1) }];
    return part
      .split(/\n{2,}/)
      .map((text) => text.trim())
      .filter((text) => text !== "")
      .map((text) => ({ kind: "text", text }));
  });
}

function renderBlock(block: Block, facts: readonly string[], { width }: ReportOptions, paint: Paint): string {
  if (block.kind === "example") return `${block.lines.map((line) => `    ${line}`.trimEnd()).join("\n")}\n`;
  const { text } = block;
  if (text.startsWith("# ")) {
    const below = facts.length === 0 ? "" : `${paint("dim", facts.join(", "))}\n`;
    return `${paint("strong", text.slice(2))}\n${below}`;
  }
  if (text.startsWith("## ")) {
    const title = text.slice(3);
    return paint(HEADING_TONES[title] ?? "strong", title);
  }
  if (text.startsWith("- ")) {
    const entries = text.slice(2).split(/\n- /);
    return `${entries.flatMap((entry) => wrapText(entry, width, "    ", "  - ")).join("\n")}\n`;
  }
  return `${wrapText(text, width, "  ").join("\n")}\n`;
}
