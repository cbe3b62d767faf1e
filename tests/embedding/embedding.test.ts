import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "embedding-"));
const BROWSERS = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
const browser = BROWSERS.find((path) => existsSync(path));

beforeAll(() => {
  const built = spawnSync(process.execPath, ["--import", "tsx", "examples/embedding/build.ts", join(folder, "page")], {
    encoding: "utf8",
  });
  if (built.status !== 0) throw new Error(built.stderr);
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const readBuilt = (file: string) => readFileSync(join(folder, "page", file), "utf8");

describe("the embedded form, built", () => {
  it("holds no code that makes code, no reader of policies and no schema compiler", () => {
    const code = readBuilt("form.js");
    expect(code).not.toMatch(/\beval\(|new Function|Function\(/);
    expect(code).not.toMatch(/YAML|yaml|ajv|\$schema/);
    console.info(`form.js: ${gzipSync(code).length} bytes gzipped`);
  });

  it("allows nothing inline and nothing from elsewhere", () => {
    const page = readBuilt("index.html");
    expect(page).toContain("default-src 'none'; script-src 'self'");
    expect(page).not.toMatch(/unsafe-|<script>|<style|style="|\son\w+=|https?:/);
  });

  it("is written beside what it fetches", () => {
    expect(readdirSync(join(folder, "page")).sort()).toEqual([
      "form.js",
      "form.json",
      "index.html",
      "plan.json",
      "sample.json",
      "style.css",
      "subject.json",
    ]);
  });
});

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
};

/** Serves the built page on this machine alone, and gives the page's text as the browser holds it at last. */
async function dumpPage(query: string, probe?: string, subject?: unknown): Promise<string> {
  const server = createServer((request, response) => {
    const path = new URL(request.url ?? "/", "http://localhost").pathname;
    const file = join(folder, "page", path === "/" ? "index.html" : path.slice(1));
    const put = (type: string, text: string) => response.writeHead(200, { "content-type": type }).end(text);
    if (path === "/probe.js") return void put("text/javascript", probe ?? "");
    if (path === "/" && probe !== undefined) {
      return void put(
        "text/html",
        readBuilt("index.html").replace("</body>", '<script src="probe.js" type="module"></script></body>'),
      );
    }
    if (subject !== undefined && path === "/subject.json") return void put("application/json", JSON.stringify(subject));
    if (subject !== undefined && path === "/form.json")
      return void put("application/json", JSON.stringify(describeFor(subject)));
    if (!existsSync(file)) response.writeHead(404).end();
    else response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "text/plain" }).end(readFileSync(file));
  });
  await new Promise<void>((resolve) => {
    server.listen(0, "127.0.0.1", resolve);
  });
  const address = server.address();
  const port = typeof address === "object" && address !== null ? address.port : 0;
  const words = [
    ...[
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
    ],
    ...[
      "--disable-component-update",
      "--disable-sync",
      `--user-data-dir=${join(folder, "profile")}`,
      "--virtual-time-budget=10000",
    ],
    ...["--dump-dom", `http://127.0.0.1:${port}/${query}`],
  ];
  try {
    return await new Promise((resolve, reject) => {
      const child = spawn(browser ?? "", words);
      let text = "";
      child.stdout.on("data", (chunk: Buffer) => {
        text += chunk.toString("utf8");
      });
      child.on("error", reject);
      child.on("close", () => {
        resolve(text);
      });
    });
  } finally {
    server.close();
  }
}

/** Waits for a control, types into it as a hand would, and lets the page answer. */
const HAND = `
const wait = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));
const find = async (id) => { while (document.getElementById(id) === null) await wait(20); return document.getElementById(id); };
const type = async (id, text) => { const control = await find(id); control.value = text; control.dispatchEvent(new Event("input", { bubbles: true })); };
`;

/** The form of the example for another subject. */
function describeFor(subject: unknown): unknown {
  const form: { steps: { step: string; asked: { part?: string }[] }[] } = JSON.parse(readBuilt("form.json"));
  const { cylinders }: { cylinders: readonly { id: string }[] } = Object(subject);
  for (const { step, asked } of form.steps) {
    const [own] = asked.filter(({ part }) => part !== undefined);
    if (step === "charge" && own !== undefined)
      asked.splice(0, 1, ...cylinders.map(({ id }) => ({ ...own, part: id })));
  }
  return form;
}

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browser === undefined)("the embedded form, in a browser", () => {
  it("shows each step that applies, with label and limit, and waits", async () => {
    const page = await dumpPage("");
    expect(page.match(/<fieldset/g)?.length).toBeGreaterThan(20);
    expect(page).toContain("at least 270 bar (90 % of rated-pressure)");
    expect(page).toContain("steps are still to be filled in");
    expect(page).toMatch(/<section id="outcome"[^>]* hidden/);
    const inputs = [...page.matchAll(/<input type="text" id="([^"]+)"/g)].map(([, id]) => id);
    expect(inputs.length).toBeGreaterThan(10);
    for (const id of inputs) expect(page).toContain(`<label for="${id}"`);
  }, 60_000);

  it("judges as it is filled, and finally", async () => {
    const page = await dumpPage("?fill=sample");
    expect(page).toContain("Withdraw from use");
    expect(page).toContain("Not accepted: 50 bar was read; 55 bar to 60 bar is accepted");
    expect(page.match(/>Accepted</g)?.length).toBeGreaterThan(20);
    const findings = /<ul id="findings">(.*?)<\/ul>/s.exec(page)?.[1] ?? "";
    expect(findings.match(/<li>/g)).toHaveLength(1);
    expect(page).toContain("Not asked: not fitted");
    expect(page).toContain("says nothing about findings of earlier checks");
    expect(page).toContain("Every step is filled in.");
    expect(page).toContain("the competent person stand above");
    expect(page).not.toMatch(/\bsafe\b/i);
  }, 60_000);

  it("takes its verdict back as soon as anything is changed", async () => {
    const probe = `${HAND}
const outcome = await find("outcome");
while (outcome.hidden) await wait(20);
document.title = outcome.hidden ? "no verdict" : "verdict shown";
await type("whistle--reading", "20");
document.title += outcome.hidden ? ", then taken back" : ", then left standing";`;
    expect(await dumpPage("?fill=sample", probe)).toContain("<title>verdict shown, then taken back</title>");
  }, 60_000);

  it("shows each cylinder its own figure", async () => {
    const subject = JSON.parse(readBuilt("subject.json"));
    const twin = { ...subject, cylinders: [...subject.cylinders, { ...subject.cylinders[0], id: "C-302" }] };
    const probe = `${HAND}
await type("charge-C-301-reading", "150");
await type("charge-C-302-reading", "120");`;
    const page = await dumpPage("", probe, twin);
    expect(/id="state-charge-C-301"[^>]*>([^<]*)/.exec(page)?.[1]).toContain("150 bar was read");
    expect(/id="state-charge-C-302"[^>]*>([^<]*)/.exec(page)?.[1]).toContain("120 bar was read");
  }, 60_000);
});
