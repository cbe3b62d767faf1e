import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { CodePage } from "./code-pages.js";
import { findPackage } from "./find-package.js";

/** The words that an assessment says without a code of their own, each as a page; none where the document was left out. */
export function readWordPages(): readonly CodePage[] {
  return readDocument()
    .split(/^## /m)
    .slice(1)
    .map((section) => {
      const [word = "", ...lines] = section.split("\n");
      return { code: word, text: `# ${word}\n\n## Means\n\n${lines.join("\n").trim()}\n` };
    });
}

function readDocument(): string {
  try {
    return readFileSync(join(findPackage(), "docs", "words.md"), "utf8");
  } catch {
    return "";
  }
}
