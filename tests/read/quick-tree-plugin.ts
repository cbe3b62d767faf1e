import { resolve } from "node:path";

/** The file that stands in for the reader. */
export const QUICK_TREE = resolve("tests/read/quick-tree.ts");

/** Whether an import of the sources is that of the reader which long runs do without (`quick-tree.ts`). */
export function isReaderImport(source: string, importer: string | undefined): boolean {
  return source === "./read-tree.js" && importer?.endsWith("/src/read/read-policy.ts") === true;
}

/** For vitest: policies that tests write as JSON are read the quick way. */
export const quickTree = {
  name: "quick-tree",
  enforce: "pre" as const,
  resolveId: (source: string, importer: string | undefined) =>
    isReaderImport(source, importer) ? QUICK_TREE : undefined,
};
