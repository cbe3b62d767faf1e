import { Composer, type CST, type Document, type ParsedNode } from "yaml";

/** Text, numbers, true, false and null as YAML 1.2 core reads them; keys are compared by the reader itself. */
const OPTIONS = {
  version: "1.2",
  schema: "core",
  merge: false,
  resolveKnownTags: false,
  // Why: the library compares every key with every other, which is too slow for a large map.
  uniqueKeys: false,
  keepSourceTokens: true,
  logLevel: "silent",
} as const;

export interface ComposedText {
  readonly document: Document.Parsed<ParsedNode>;
  /** Where a second document begins. */
  readonly secondStart: number | undefined;
}

/** Composes the first document and looks whether there is another. */
export function composeDocument(tokens: readonly CST.Token[], length: number): ComposedText | undefined {
  const documents = new Composer<ParsedNode>(OPTIONS).compose(tokens, true, length);
  const first = documents.next();
  if (first.done === true) return undefined;
  const second = documents.next();
  return { document: first.value, secondStart: second.done === true ? undefined : second.value.range[0] };
}
