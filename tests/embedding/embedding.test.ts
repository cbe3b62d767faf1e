import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { evaluate, restorePlan } from "../../src/plan-entry.js";
import { BROWSER_ARGUMENTS, browserPath } from "./drive-browser.js";
import { type BuiltPage, buildPage, servePage } from "./serve-page.js";

let page: BuiltPage;

beforeAll(() => {
  page = buildPage();
});
afterAll(() => page.remove());

describe("the embedded form, built", () => {
  it("holds no code that makes code, no reader of policies and no schema compiler", () => {
    const code = page.read("form.js");
    expect(code).not.toMatch(/\beval\(|new Function|Function\(/);
    expect(code).not.toMatch(/YAML|yaml|ajv|\$schema/);
    console.info(`form.js: ${gzipSync(code).length} bytes gzipped`);
  });

  it("allows nothing inline and nothing from elsewhere", () => {
    const markup = page.read("index.html");
    expect(markup).toContain("default-src 'none'; script-src 'self'");
    expect(markup).not.toMatch(/unsafe-|<script>|<style|style="|\son\w+=|https?:/);
  });

  it("is written beside what it fetches", () => {
    expect(readdirSync(join(page.folder, "page")).sort()).toEqual([
      "form.js",
      "form.json",
      "index.html",
      "plan.json",
      "record.json",
      "sample.json",
      "style.css",
    ]);
  });
});

/** Gives the page's text as the browser holds it at last. */
async function dumpPage(query: string, probe?: string, subject?: unknown): Promise<string> {
  const body = `${probe === undefined ? "" : '<script src="probe.js" type="module"></script>'}</body>`;
  const replaced = {
    "probe.js": probe ?? "",
    "index.html": page.read("index.html").replace("</body>", body),
    ...(subject === undefined
      ? {}
      : {
          "record.json": JSON.stringify({ ...JSON.parse(page.read("record.json")), subject }),
          "form.json": JSON.stringify(describeFor(subject)),
        }),
  };
  return servePage(page, replaced, (address) => {
    const profile = `--user-data-dir=${mkdtempSync(join(page.folder, "profile-"))}`;
    const words = [...BROWSER_ARGUMENTS, profile, "--virtual-time-budget=10000", "--dump-dom", `${address}${query}`];
    return new Promise((resolve, reject) => {
      const child = spawn(browserPath ?? "", words);
      let text = "";
      child.stdout.on("data", (chunk: Buffer) => {
        text += chunk.toString("utf8");
      });
      child.on("error", reject);
      child.on("close", () => {
        resolve(text);
      });
    });
  });
}

/** Waits for a control, types into it as a hand would, and lets the page answer. */
const HAND = `
const wait = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));
const find = async (id) => { while (document.getElementById(id) === null) await wait(20); return document.getElementById(id); };
const type = async (id, text) => { const control = await find(id); control.value = text; control.dispatchEvent(new Event("input", { bubbles: true })); };
`;

/** The form of the example for another subject. */
function describeFor(subject: unknown): unknown {
  const form: { steps: { step: string; asked: { part?: string }[] }[] } = JSON.parse(page.read("form.json"));
  const { cylinders }: { cylinders: readonly { id: string }[] } = Object(subject);
  for (const { step, asked } of form.steps) {
    const [own] = asked.filter(({ part }) => part !== undefined);
    if (step === "charge" && own !== undefined)
      asked.splice(0, 1, ...cylinders.map(({ id }) => ({ ...own, part: id })));
  }
  return form;
}

// Why skipped: a machine that has only Node has no browser to try the page in.
describe.skipIf(browserPath === undefined)("the embedded form, in a browser", () => {
  it("shows each step that applies, with label and limit, and waits", async () => {
    const dumped = await dumpPage("");
    expect(dumped.match(/<fieldset/g)?.length).toBeGreaterThan(20);
    expect(dumped).toContain("270 bar (90 % of rated-pressure) to 330 bar (110 % of rated-pressure)");
    const [, open, all] = /(\d+) of (\d+) steps are still to be filled in\./.exec(dumped) ?? [];
    expect(Number(all)).toBeGreaterThan(20);
    expect(open).toBe(all);
    expect(dumped).toMatch(/<section id="outcome"[^>]* hidden/);
    const inputs = [...dumped.matchAll(/<input type="text" id="([^"]+)"/g)].map(([, id]) => id);
    expect(inputs.length).toBeGreaterThan(10);
    for (const id of inputs) expect(dumped).toContain(`<label class="caption" for="${id}"`);
  }, 60_000);

  it("judges as it is filled, and finally", async () => {
    const dumped = await dumpPage("?fill=sample");
    expect(dumped).toContain("Withdraw from use");
    expect(dumped).toContain("Not accepted: 50 bar was read; 55 bar to 60 bar is accepted");
    expect(dumped.match(/>Accepted\.</g)?.length).toBeGreaterThan(20);
    const findings = /<ul id="findings">(.*?)<\/ul>/s.exec(dumped)?.[1] ?? "";
    const { policy } = restorePlan(JSON.parse(page.read("plan.json")));
    if (policy === undefined) throw new Error("the saved plan was refused");
    const record = { ...JSON.parse(page.read("record.json")), steps: JSON.parse(page.read("sample.json")) };
    const judged = evaluate(policy, record).findings;
    expect(findings.match(/<li>/g)).toHaveLength(judged.length);
    expect(judged.filter(({ outcome }) => outcome !== undefined)).toHaveLength(1);
    for (const { message } of judged) expect(findings).toContain(message.replaceAll("`", ""));
    expect(dumped).toContain("Not asked: not fitted");
    expect(dumped).toContain("says nothing about findings of earlier checks");
    expect(dumped).toContain("Every step is filled in.");
    expect(dumped).toContain("the competent person stand above");
    expect(dumped).not.toMatch(/\bsafe\b/i);
  }, 60_000);

  it("takes its verdict back as soon as anything is changed", async () => {
    const probe = `${HAND}
const outcome = await find("outcome");
while (outcome.hidden) await wait(20);
document.title = outcome.hidden ? "no verdict" : "verdict shown";
await type("whistle//reading", "20");
document.title += outcome.hidden ? ", then taken back" : ", then left standing";`;
    expect(await dumpPage("?fill=sample", probe)).toContain("<title>verdict shown, then taken back</title>");
  }, 60_000);

  it("shows each cylinder its own figure", async () => {
    const { subject } = JSON.parse(page.read("record.json"));
    const twin = { ...subject, cylinders: [...subject.cylinders, { ...subject.cylinders[0], id: "C-302" }] };
    const probe = `${HAND}
await type("charge/C-301/reading", "150");
await type("charge/C-302/reading", "120");`;
    const dumped = await dumpPage("", probe, twin);
    expect(/id="charge\/C-301\/state"[^>]*>([^<]*)/.exec(dumped)?.[1]).toContain("150 bar was read");
    expect(/id="charge\/C-302\/state"[^>]*>([^<]*)/.exec(dumped)?.[1]).toContain("120 bar was read");
  }, 60_000);
});
