import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { setTimeout } from "node:timers/promises";

/** What is answered in place of a built file: text, or a status alone. */
export type Replaced = Readonly<Record<string, string | number>>;

export interface BuiltPage {
  /** The folder that holds `page`, and room for whatever a test leaves. */
  readonly folder: string;
  readonly read: (file: string) => string;
  readonly remove: () => Promise<void>;
}

/** Builds the page as its README says. */
export function buildPage(): BuiltPage {
  const folder = mkdtempSync(join(tmpdir(), "embedding-"));
  const built = spawnSync(process.execPath, ["--import", "tsx", "examples/embedding/build.ts", join(folder, "page")], {
    encoding: "utf8",
  });
  if (built.status !== 0) throw new Error(built.stderr);
  return {
    folder,
    read: (file) => readFileSync(join(folder, "page", file), "utf8"),
    remove: () => removeFolder(folder),
  };
}

/**
 * Removes a folder that a closing browser may still write to.
 * Node's own retries do not look again at what has come into a folder since it was first read.
 */
async function removeFolder(folder: string): Promise<void> {
  const until = Date.now() + 20_000;
  while (existsSync(folder)) {
    try {
      rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      if (Date.now() > until) throw error;
      await setTimeout(100);
    }
  }
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
};

/** Serves the built page on this machine alone while `use` runs. */
export async function servePage<T>(
  { folder }: BuiltPage,
  replaced: Replaced,
  use: (address: string) => Promise<T>,
): Promise<T> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    const name = path === "/" ? "index.html" : path.slice(1);
    const file = join(folder, "page", name);
    const given = replaced[name] ?? (existsSync(file) ? readFileSync(file, "utf8") : 404);
    if (typeof given === "number") response.writeHead(given).end();
    else response.writeHead(200, { "content-type": TYPES[extname(name)] ?? "text/plain" }).end(given);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, "127.0.0.1", resolve);
  });
  const address = server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  try {
    return await use(`http://127.0.0.1:${port}/`);
  } finally {
    server.closeAllConnections();
    server.close();
  }
}
