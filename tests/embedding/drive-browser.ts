import { spawn } from "node:child_process";
import { existsSync, mkdtempSync } from "node:fs";
import { join } from "node:path";
import { Writable } from "node:stream";

const BROWSERS = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

/** Where a browser is; undefined on a machine that has only Node, where what needs one is skipped. */
export const browserPath = BROWSERS.find((path) => existsSync(path));

export const BROWSER_ARGUMENTS = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

type Params = Readonly<Record<string, unknown>>;

/** A page in a browser, driven as a hand would: through keys. */
export interface Tab {
  /** Sends one command of the browser's own protocol and gives its result as JSON. */
  readonly send: (method: string, params?: Params) => Promise<string>;
  /** The value of an expression on the page, as JSON. */
  readonly read: (expression: string) => Promise<string>;
  /** Waits until an expression on the page is true. */
  readonly waitFor: (expression: string) => Promise<void>;
  /** Presses one key, `Shift+` or `Control+` before it where that is held. */
  readonly press: (key: string) => Promise<void>;
  /** Types a text, key by key. */
  readonly type: (text: string) => Promise<void>;
}

interface Reply {
  readonly id?: number;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

/** Opens `address` in a browser of its own for as long as `use` runs. */
export async function openTab<T>(folder: string, address: string, use: (tab: Tab) => Promise<T>): Promise<T> {
  const profile = mkdtempSync(join(folder, "profile-"));
  const words = [...BROWSER_ARGUMENTS, "--remote-debugging-pipe", `--user-data-dir=${profile}`, "about:blank"];
  const child = spawn(browserPath ?? "", words, {
    stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"],
    detached: true,
  });
  const closed = new Promise((resolve) => child.on("close", resolve));
  const [, , , input, output] = child.stdio;
  if (!(input instanceof Writable) || !output) throw new Error("the browser was started without its pipes");
  const waiting = new Map<number, (reply: Reply) => void>();
  let rest = "";
  output.on("data", (chunk: Buffer) => {
    const texts = (rest + chunk.toString("utf8")).split("\0");
    rest = texts.pop() ?? "";
    for (const text of texts) {
      const reply: Reply = JSON.parse(text);
      if (reply.id !== undefined) waiting.get(reply.id)?.(reply);
    }
  });
  let last = 0;
  const call = (method: string, params: Params, sessionId?: string): Promise<string> =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, ({ result, error }) => {
        if (error === undefined) resolve(JSON.stringify(result));
        else reject(new Error(`${method}: ${error.message}`));
      });
      input.write(`${JSON.stringify({ id: last, method, params, sessionId })}\0`);
    });
  try {
    const { targetId }: { targetId: string } = JSON.parse(await call("Target.createTarget", { url: "about:blank" }));
    const attached: { sessionId: string } = JSON.parse(
      await call("Target.attachToTarget", { targetId, flatten: true }),
    );
    const tab = makeTab((method, params = {}) => call(method, params, attached.sessionId));
    await tab.send("Emulation.setFocusEmulationEnabled", { enabled: true });
    await tab.send("Page.enable");
    await tab.send("Page.navigate", { url: address });
    return await use(tab);
  } finally {
    // All of its processes, so that none still writes to its profile.
    if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, "SIGKILL");
    await closed;
  }
}

function makeTab(send: Tab["send"]): Tab {
  const read = async (expression: string): Promise<string> => {
    const answer: { result: { value?: string }; exceptionDetails?: unknown } = JSON.parse(
      await send("Runtime.evaluate", { expression: `JSON.stringify(${expression}) ?? "null"`, returnByValue: true }),
    );
    if (answer.exceptionDetails !== undefined) throw new Error(JSON.stringify(answer.exceptionDetails));
    return answer.result.value ?? "null";
  };
  const press = (key: string) => pressKey(send, key);
  return {
    send,
    read,
    press,
    waitFor: async (expression) => {
      const until = Date.now() + 20_000;
      while ((await read(`Boolean(${expression})`).catch(() => "false")) !== "true") {
        if (Date.now() > until) throw new Error(`never came: ${expression}`);
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
    },
    type: async (text) => {
      for (const letter of text) await press(letter);
    },
  };
}

/** The keys that are no letters: the code that the browser knows each by, and the text that it writes. */
const KEYS: Readonly<Record<string, readonly [code: number, text: string]>> = {
  Tab: [9, ""],
  Enter: [13, "\r"],
  " ": [32, " "],
  ArrowDown: [40, ""],
  ArrowUp: [38, ""],
  Backspace: [8, ""],
};
const HELD = { Shift: 8, Control: 2 } as const;

async function pressKey(send: Tab["send"], words: string): Promise<void> {
  const [, held, key = ""] = /^(?:(Shift|Control)\+)?(.+)$/s.exec(words) ?? [];
  const modifiers = held === "Shift" || held === "Control" ? HELD[held] : 0;
  const [code, text] = KEYS[key] ?? [key.toUpperCase().charCodeAt(0), held === "Control" ? "" : key];
  const event = {
    key,
    modifiers,
    ...(key.length > 1 ? { code: key } : key === " " ? { code: "Space" } : {}),
    ...(KEYS[key] === undefined && held !== "Control" ? {} : { windowsVirtualKeyCode: code }),
    ...(held === "Control" && key === "a" ? { commands: ["selectAll"] } : {}),
  };
  await send("Input.dispatchKeyEvent", {
    ...event,
    type: text === "" ? "rawKeyDown" : "keyDown",
    ...(text === "" ? {} : { text }),
  });
  await send("Input.dispatchKeyEvent", { ...event, type: "keyUp" });
}
