import { readdirSync, readFileSync } from "node:fs";

export interface Example {
  /** Such as `yaml bad`. */
  readonly info: string;
  readonly text: string;
}

export interface Section {
  readonly title: string;
  readonly body: string;
  readonly examples: readonly Example[];
}

export interface CodePage {
  readonly file: string;
  /** The lines between the two `---`, by key. */
  readonly head: Readonly<Record<string, string>>;
  readonly title: string;
  readonly sections: readonly Section[];
}

export const FOLDER = "docs/codes";

/** Every page, with its file seen from {@link FOLDER}. */
export function readCodePages(): readonly CodePage[] {
  return readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => file.endsWith(".md") && file !== "README.md")
    .sort()
    .map(readPage);
}

function readPage(file: string): CodePage {
  const text = readFileSync(`${FOLDER}/${file}`, "utf8");
  const [, head = "", title = "", body = ""] = /^---\n([\s\S]*?)\n---\n\n# (.*)\n([\s\S]*)$/.exec(text) ?? [];
  const parts = body.split(/^## (.*)\n/m).slice(1);
  const sections = parts.flatMap((part, index) =>
    index % 2 === 1 ? [{ title: parts[index - 1] ?? "", body: part.trim(), examples: listExamples(part) }] : [],
  );
  const pairs = head.split("\n").map((line) => /^([a-z]+): (.+)$/.exec(line)?.slice(1) ?? [line, ""]);
  return { file, head: Object.fromEntries(pairs), title, sections };
}

function listExamples(body: string): readonly Example[] {
  return [...body.matchAll(/^```([^\n]*)\n([\s\S]*?)\n```$/gm)].map(([, info = "", text = ""]) => ({
    info,
    text: `${repeatTexts(text)}\n`,
  }));
}

/** Writes out what an example abbreviates: `{{4 × "ab"}}` is `abababab`, the text as JSON has it. */
function repeatTexts(text: string): string {
  return text.replaceAll(/\{\{(\d+) × ("(?:[^"\\]|\\.)*")\}\}/g, (_whole, count: string, quoted: string) =>
    String(JSON.parse(quoted)).repeat(Number(count)),
  );
}

export function findSection({ file, sections }: CodePage, title: string): Section {
  const found = sections.find((section) => section.title === title);
  if (found === undefined) throw new Error(`${file} has no section ${title}`);
  return found;
}

/** The only example of a section. */
export function findExample(page: CodePage, title: string): string {
  const [example, ...others] = findSection(page, title).examples;
  if (example === undefined || others.length > 0) throw new Error(`${page.file} has not one example under ${title}`);
  return example.text;
}
