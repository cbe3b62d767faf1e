import { type ChildProcess, spawn } from "node:child_process";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";
import { type Fields, readFields, readList } from "./fields.js";
import { createMessageReader, frameMessage } from "./message-reader.js";

const require = createRequire(import.meta.url);
const SERVER = require.resolve("yaml-language-server/bin/yaml-language-server");

/** A program that runs before the server and refuses it every connection, with a word on its standard error. */
const REFUSE_NETWORK = `data:text/javascript,${encodeURIComponent(
  `import net from "node:net";
  net.Socket.prototype.connect = () => { process.stderr.write("asked for the network"); throw new Error("no network"); };`,
)}`;

/** Files that a schema is for, by the path of the schema from the folder that is open in the editor. */
export type SchemaSettings = Readonly<Record<string, string>>;

/** What the server is told when it asks: nothing is fetched. */
const SETTINGS = {
  validate: true,
  hover: true,
  completion: true,
  schemaStore: { enable: false },
  kubernetesCRDStore: { enable: false },
};

const CAPABILITIES = {
  workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } },
  textDocument: {
    hover: { contentFormat: ["markdown", "plaintext"] },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown", "plaintext"] } },
    publishDiagnostics: {},
  },
};

/** A language server in a process of its own. */
export interface LanguageClient {
  /** What the server answers; rejects where it answers with an error, or ends. */
  request(method: string, params: unknown): Promise<unknown>;
  notify(method: string, params: unknown): void;
  /** Calls back with the params of each notification of this name from now on. */
  listen(method: string, listener: (params: unknown) => void): void;
  /** Ends the server; what it wrote to its standard error. */
  stop(): Promise<string>;
}

/** Starts the YAML language server over its standard streams, with this project as the open folder. */
export async function startLanguageClient(schemas: SchemaSettings): Promise<LanguageClient> {
  const server = spawn(process.execPath, ["--import", REFUSE_NETWORK, SERVER, "--stdio"]);
  const client = connectClient(server, { yaml: { ...SETTINGS, schemas } });
  const rootUri = pathToFileURL(process.cwd()).href;
  const workspaceFolders = [{ uri: rootUri, name: "tenbar" }];
  const processId = process.pid;
  await client.request("initialize", { processId, rootUri, workspaceFolders, capabilities: CAPABILITIES });
  client.notify("initialized", {});
  client.notify("workspace/didChangeConfiguration", { settings: {} });
  return client;
}

interface Waiter {
  resolve(value: unknown): void;
  reject(reason: Error): void;
}

function connectClient(server: ChildProcess, settings: Fields): LanguageClient {
  const waiters = new Map<number, Waiter>();
  const listeners: { readonly method: string; listener(params: unknown): void }[] = [];
  const complaints: string[] = [];
  const send = (message: object): void => void server.stdin?.write(frameMessage(message));
  const receive = (message: Fields): void => {
    const { id, method, params } = message;
    if (method === undefined) settle(waiters, message);
    else if (id !== undefined) send({ id, result: answerServer(method, params, settings) });
    else for (const one of listeners) if (one.method === method) one.listener(params);
  };
  server.stdout?.on(
    "data",
    createMessageReader((message) => receive(readFields(message))),
  );
  server.stderr?.on("data", (bytes) => complaints.push(String(bytes)));
  const ended = new Promise<void>((resolve) => server.once("close", () => resolve()));
  void ended.then(() => {
    for (const { reject } of waiters.values()) reject(new Error(`the language server ended: ${complaints.join("")}`));
  });
  let count = 0;
  const request = (method: string, params: unknown): Promise<unknown> =>
    new Promise((resolve, reject) => {
      count += 1;
      waiters.set(count, { resolve, reject });
      send({ id: count, method, params });
    });
  return {
    request,
    notify: (method, params) => send({ method, params }),
    listen: (method, listener) => void listeners.push({ method, listener }),
    stop: async () => {
      await request("shutdown", null);
      send({ method: "exit" });
      await ended;
      return complaints.join("");
    },
  };
}

function settle(waiters: Map<number, Waiter>, { id, result, error }: Fields): void {
  const waiter = waiters.get(Number(id));
  waiters.delete(Number(id));
  if (error === undefined) waiter?.resolve(result);
  else waiter?.reject(new Error(JSON.stringify(error)));
}

/** The server asks for its settings by section; whatever else it asks, it gets nothing. */
function answerServer(method: unknown, params: unknown, settings: Fields): unknown {
  if (method !== "workspace/configuration") return null;
  return readList(readFields(params)["items"]).map((item) => settings[String(readFields(item)["section"])] ?? null);
}
