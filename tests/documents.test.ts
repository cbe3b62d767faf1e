import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../src/index.js";

interface Example {
  readonly page: string;
  readonly line: number;
  readonly info: string;
  readonly text: string;
}

const PAGES = [
  "README.md",
  "DEVELOPERS.md",
  ...readdirSync("docs", { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".md"))
    .map((file) => join("docs", file)),
];

/** Every fenced example of a page with its info string. */
function listExamples(page: string): readonly Example[] {
  const lines = readFileSync(page, "utf8").split("\n");
  const examples: Example[] = [];
  let open: { line: number; info: string; text: string[] } | undefined;
  lines.forEach((line, index) => {
    const fence = /^```(.*)$/.exec(line);
    if (fence === null) open?.text.push(line);
    else if (open === undefined) open = { line: index + 1, info: (fence[1] ?? "").trim(), text: [] };
    else {
      examples.push({ page, line: open.line, info: open.info, text: open.text.join("\n") });
      open = undefined;
    }
  });
  return examples;
}

const EXAMPLES = PAGES.flatMap(listExamples);
const withInfo = (info: string) =>
  EXAMPLES.filter((example) => example.info === info).map(
    (example) => [`${example.page}:${example.line}`, example] as const,
  );

const HEAD = `tenbar: 1
policy: { id: docs/example, title: Example, version: "1", status: draft }
deference: Local procedure stands above this policy.
checks:
  daily:
    order: any
    steps:
`;

/** The policy example that stands last before an example on the same page. */
function findPolicy({ page, line }: Example): string {
  const found = EXAMPLES.filter((one) => one.page === page && one.info === "yaml policy" && one.line < line).at(-1);
  if (found === undefined) throw new Error(`${page}:${line} has no policy before it`);
  return found.text;
}

const KNOWN_INFOS = ["yaml policy", "yaml step", "yaml part", "json record", "json finding", "ts", "sh", "text"];

describe("examples in documents", () => {
  it("carry an info string that says how they are run", () => {
    expect(
      EXAMPLES.filter(({ info }) => !KNOWN_INFOS.includes(info)).map(({ page, line, info }) => [page, line, info]),
    ).toEqual([]);
    expect(withInfo("yaml policy").length).toBeGreaterThan(0);
  });

  it.each(withInfo("yaml policy"))("policy %s compiles without a word", (_place, { text }) => {
    const { policy, diagnostics } = compilePolicy(text);
    expect(diagnostics).toEqual([]);
    expect(policy).toBeDefined();
  });

  it.each([["", undefined] as const, ...withInfo("yaml step")])("step %s compiles", (_place, example) => {
    if (example === undefined) return;
    const indented = example.text.split("\n").map((line) => `      ${line}`);
    const text = `${HEAD}${indented.join("\n")}\n`;
    const { diagnostics } = compilePolicy(text);
    expect(diagnostics.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it.each(withInfo("json record"))("record %s is judged by the policy before it", (_place, example) => {
    const { policy } = compilePolicy(findPolicy(example));
    if (policy === undefined) throw new Error("the policy does not compile");
    expect(evaluate(policy, JSON.parse(example.text)).judged).toBe(true);
  });

  it.each(withInfo("json finding"))("finding %s is what the record before it gives", (_place, example) => {
    const { policy } = compilePolicy(findPolicy(example));
    const record = EXAMPLES.filter(
      (one) => one.page === example.page && one.info === "json record" && one.line < example.line,
    ).at(-1);
    if (policy === undefined || record === undefined) throw new Error("there is nothing to judge");
    expect(evaluate(policy, JSON.parse(record.text)).findings).toContainEqual(JSON.parse(example.text));
  });
});

describe("programs in documents", () => {
  it.each(withInfo("ts"))("%s is accepted by the compiler and runs", (_place, example) => {
    const folder = mkdtempSync(join(tmpdir(), "documents-"));
    try {
      const policy = EXAMPLES.find((one) => one.page === example.page && one.info === "yaml policy")?.text ?? "";
      const source = example.text
        .replace('const text = "…"; // the policy above', `const text = ${JSON.stringify(policy)};`)
        .replaceAll('from "tenbar"', `from ${JSON.stringify(resolve("src/index.ts"))}`)
        .replaceAll('from "tenbar/plan"', `from ${JSON.stringify(resolve("src/plan-entry.ts"))}`)
        .replaceAll('from "tenbar/node"', `from ${JSON.stringify(resolve("src/node.ts"))}`);
      symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
      writeFileSync(join(folder, "example.mts"), source);
      const ran = spawnSync(process.execPath, ["--import", "tsx", join(folder, "example.mts")], { encoding: "utf8" });
      expect(ran.stderr).toBe("");
      expect(ran.status).toBe(0);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  const commands = withInfo("sh").flatMap(([place, { text }]) =>
    text
      .split("\n")
      .filter((line) => line !== "" && !line.startsWith("#"))
      .map((line) => [`${place} ${line}`, line] as const),
  );

  it.each(commands)("%s does what it says", (_place, line) => {
    const { scripts }: { scripts: Readonly<Record<string, string>> } = JSON.parse(readFileSync("package.json", "utf8"));
    const script = /^npm install && npm (?:run )?(\S+)$/.exec(line)?.[1];
    if (script !== undefined) {
      expect(Object.keys(scripts)).toContain(script);
      return;
    }
    const words = /^npx tenbar (.+)$/.exec(line)?.[1]?.split(" ");
    if (words === undefined) throw new Error(`nobody knows how to run ${line}`);
    const ran = spawnSync(process.execPath, ["--import", "tsx", "src/cli/main.ts", ...words], { encoding: "utf8" });
    expect([0, 1]).toContain(ran.status);
    expect(ran.stdout).not.toBe("");
  });
});

describe("paths in documents", () => {
  it("all exist", () => {
    const missing = PAGES.flatMap((page) =>
      [...readFileSync(page, "utf8").matchAll(/\]\((?!https?:|#)([^)#]+)/g)]
        .map(([, path = ""]) => path)
        .filter((path) => !existsSync(join(dirname(page), path)))
        .map((path) => `${page}: ${path}`),
    );
    expect(missing).toEqual([]);
  });

  it("README opens with the job and its two commands", () => {
    const [title, , ...rest] = readFileSync("README.md", "utf8").split("\n");
    expect(title).toBe("# tenbar");
    const head = rest.slice(0, 20).join("\n");
    expect(head).toContain("npm install && npm run demo");
    expect(head).toContain("npm install && npm test");
  });
});
