import { resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { readFields, readList } from "./fields.js";
import { type SchemaSettings, startLanguageClient } from "./language-client.js";

/** What an editor underlines; the line counts from 1. */
export interface Problem {
  readonly line: number;
  readonly message: string;
}

/** What an editor offers at a place. */
export interface Offer {
  readonly label: string;
  /** The text that it would write. */
  readonly insert: string;
  readonly help: string;
}

/** An editor that speaks to a YAML language server, without a screen. */
export interface Editor {
  /** Opens a text as if it lay at this path, and waits for what is underlined in it. */
  diagnose(path: string, text: string): Promise<readonly Problem[]>;
  /** The help that is shown over a key of an opened text: the first one that stands behind `mark`. */
  hover(path: string, text: string, mark: string): Promise<string>;
  /** What is offered at the sign `|` of a text, which is opened without it. */
  complete(path: string, text: string): Promise<readonly Offer[]>;
  /** Closes the editor; what its server complained of. */
  close(): Promise<string>;
}

/** `schemas` stand in the settings; left out, only the schema counts that a text itself names. */
export async function openEditor(schemas: SchemaSettings = {}): Promise<Editor> {
  const client = await startLanguageClient(schemas);
  const waiting = new Map<string, (problems: readonly Problem[]) => void>();
  client.listen("textDocument/publishDiagnostics", (params) => {
    const { uri, diagnostics } = readFields(params);
    waiting.get(String(uri))?.(readList(diagnostics).map(readProblem));
  });
  const open = (path: string, text: string): Promise<readonly Problem[]> => {
    const uri = makeUri(path);
    const published = new Promise<readonly Problem[]>((done) => waiting.set(uri, done));
    client.notify("textDocument/didOpen", { textDocument: { uri, languageId: "yaml", version: 1, text } });
    return published;
  };
  const ask = (method: string, path: string, text: string, offset: number): Promise<unknown> => {
    const before = text.slice(0, offset).split("\n");
    const position = { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
    return client.request(method, { textDocument: { uri: makeUri(path) }, position });
  };
  return {
    diagnose: open,
    hover: async (path, text, mark) => {
      const at = text.indexOf(mark);
      if (at < 0) throw new Error(`the text has no ${mark}`);
      const answer = await ask("textDocument/hover", path, text, at + mark.search(/[a-z]/) + 1);
      return answer === null ? "" : String(readFields(readFields(answer)["contents"])["value"]);
    },
    complete: async (path, marked) => {
      const at = marked.indexOf("|");
      const text = marked.slice(0, at) + marked.slice(at + 1);
      await open(path, text);
      const { items } = readFields(await ask("textDocument/completion", path, text, at));
      return readList(items).map(readOffer);
    },
    close: () => client.stop(),
  };
}

function makeUri(path: string): string {
  return pathToFileURL(resolve(path)).href;
}

function readProblem(value: unknown): Problem {
  const { message, range } = readFields(value);
  return { line: Number(readFields(readFields(range)["start"])["line"]) + 1, message: String(message) };
}

function readOffer(value: unknown): Offer {
  const { label, insertText, documentation } = readFields(value);
  const help = typeof documentation === "object" ? readFields(documentation)["value"] : documentation;
  return { label: String(label), insert: String(insertText), help: String(help ?? "") };
}
