import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { compilePolicy, evaluate } from "../src/index.js";
import { renderAnnotations, renderDiagnostics, renderSarif } from "../src/report/index.js";
import { OUTCOMES, REQUIREMENTS, STEP_KINDS } from "../src/terms/index.js";

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

// Why: the examples of the pages of codes are run, and held to more, in tests/codes.
const EXAMPLES = PAGES.filter((page) => !/docs.codes/.test(page)).flatMap(listExamples);
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

const KNOWN_INFOS = [
  "yaml policy",
  "yaml child",
  "yaml mistaken",
  "yaml step",
  "json record",
  "json step",
  "json result",
  "json finding",
  "ts",
  "sh",
  "text",
  "json sarif",
  "text diagnostics",
  "text annotations",
  "text output",
];

/** The subject of which the steps in documents are recorded. */
const SUBJECT = {
  kind: "set",
  id: "S-014",
  marking: "014",
  class: "open-circuit",
  fitted: { "motion-alarm": true },
  cylinders: [{ id: "C-381", ratedPressure: "300 bar", requalifiedOn: "2024-05-02" }],
};

const SHIPPED = { "common-practice/open-circuit": readFileSync("policies/common-practice/open-circuit.yaml", "utf8") };

/** The example of a kind that stands last before an example on the same page. */
function findBefore({ page, line }: Example, info: string): string {
  const found = EXAMPLES.filter((one) => one.page === page && one.info === info && one.line < line).at(-1);
  if (found === undefined) throw new Error(`${page}:${line} has no \`${info}\` before it`);
  return found.text;
}

/** A policy whose only step is the one given. */
function wrapStep(text: string): string {
  const indented = text.split("\n").map((line) => `      ${line}`);
  return `${HEAD}${indented.join("\n")}\n`;
}

function describeErrors(text: string): readonly string[] {
  return compilePolicy(text)
    .diagnostics.filter(({ severity }) => severity === "error")
    .map(({ message }) => message);
}

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

  it.each(withInfo("yaml child"))("policy %s extends the shipped one without a word", (_place, { text }) => {
    const { policy, diagnostics } = compilePolicy(text, { parents: SHIPPED });
    expect(diagnostics).toEqual([]);
    expect(policy).toBeDefined();
  });

  it.each(withInfo("yaml mistaken"))("policy %s is not passed in silence", (_place, { text }) => {
    expect(compilePolicy(text, { parents: SHIPPED }).diagnostics).not.toEqual([]);
  });

  it.each(withInfo("text diagnostics"))("diagnostics %s are those of the policy before them", (_place, example) => {
    const { diagnostics } = compilePolicy(findBefore(example, "yaml mistaken"), { parents: SHIPPED });
    expect(diagnostics.length).toBeGreaterThan(0);
    expect(renderDiagnostics(diagnostics, { color: false, width: 80 }).trimEnd()).toBe(example.text);
  });

  it.each(withInfo("text annotations"))("annotations %s are those of the policy before them", (_place, example) => {
    const { diagnostics } = compilePolicy(findBefore(example, "yaml mistaken"), { parents: SHIPPED });
    expect(renderAnnotations(diagnostics).trimEnd()).toBe(example.text);
  });

  it.each(withInfo("json sarif"))("result %s is that of the policy before it", (_place, example) => {
    const { diagnostics } = compilePolicy(findBefore(example, "yaml mistaken"), { parents: SHIPPED });
    const log: { runs: readonly { results: unknown }[] } = JSON.parse(renderSarif(diagnostics, { version: "0" }));
    expect(log.runs[0]?.results).toEqual([JSON.parse(example.text)]);
  });

  it.each(withInfo("yaml step"))("step %s compiles", (_place, { text }) => {
    expect(describeErrors(wrapStep(text))).toEqual([]);
  });

  it.each(withInfo("json result"))("result %s is what the step before it gives", (_place, example) => {
    const { policy } = compilePolicy(wrapStep(findBefore(example, "yaml step")));
    const step: unknown = JSON.parse(findBefore(example, "json step"));
    if (policy === undefined) throw new Error("the step does not compile");
    const record = { tenbar: 1, id: "lm3-1", check: "daily", at: "2026-04-12", subject: SUBJECT, steps: [step] };
    expect(evaluate(policy, record).results).toContainEqual(JSON.parse(example.text));
  });

  it.each(withInfo("json record"))("record %s is judged by the policy before it", (_place, example) => {
    const { policy } = compilePolicy(findBefore(example, "yaml policy"));
    if (policy === undefined) throw new Error("the policy does not compile");
    expect(evaluate(policy, JSON.parse(example.text)).judged).toBe(true);
  });

  it.each(withInfo("json finding"))("finding %s is what the record before it gives", (_place, example) => {
    const { policy } = compilePolicy(findBefore(example, "yaml policy"));
    const record = EXAMPLES.filter(
      (one) => one.page === example.page && one.info === "json record" && one.line < example.line,
    ).at(-1);
    if (policy === undefined || record === undefined) throw new Error("there is nothing to judge");
    expect(evaluate(policy, JSON.parse(record.text)).findings).toContainEqual(JSON.parse(example.text));
  });
});

/** The output that a page shows directly behind the command at `place`. */
function findShown(place: string): string | undefined {
  const index = EXAMPLES.findIndex(({ page, line }) => `${page}:${line}` === place);
  const next = EXAMPLES[index + 1];
  return next?.info === "text output" && place.startsWith(`${next.page}:`) ? next.text : undefined;
}

describe("programs in documents", () => {
  const folder = mkdtempSync(join(tmpdir(), "documents-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const programs = withInfo("ts").map(([place, example], index) => {
    const policy = EXAMPLES.find((one) => one.page === example.page && one.info === "yaml policy")?.text ?? "";
    const stand = 'const text = "…"; // the policy above';
    const source = example.text.replace(stand, () => `const text = ${JSON.stringify(policy)};`);
    const file = `example-${index + 1}.mts`;
    writeFileSync(join(folder, file), `${source}\nexport {};\n`);
    return [place, file] as const;
  });
  const doors = {
    tenbar: "src/index.ts",
    "tenbar/node": "src/node.ts",
    "tenbar/plan": "src/plan-entry.ts",
    "tenbar/german": "src/german.ts",
  };
  const settings = {
    extends: resolve("tsconfig.json"),
    compilerOptions: {
      noEmit: true,
      paths: Object.fromEntries(Object.entries(doors).map(([door, file]) => [door, [resolve(file)]])),
      typeRoots: [resolve("node_modules/@types")],
    },
    include: ["*.mts"],
  };
  symlinkSync(resolve("node_modules"), join(folder, "node_modules"));
  writeFileSync(join(folder, "tsconfig.json"), JSON.stringify(settings));

  it("are accepted by the compiler", { timeout: 60_000 }, () => {
    const arguments_ = [resolve("node_modules/typescript/bin/tsc"), "-p", folder];
    const { stdout } = spawnSync(process.execPath, arguments_, { encoding: "utf8" });
    expect(programs.length).toBeGreaterThan(0);
    expect(stdout).toBe("");
  });

  it.each(programs)("%s runs", (_place, file) => {
    const settingsFile = join(folder, "tsconfig.json");
    const ran = spawnSync(process.execPath, ["--import", "tsx", join(folder, file)], {
      encoding: "utf8",
      env: { ...process.env, TSX_TSCONFIG_PATH: settingsFile },
    });
    expect(ran.stderr).toBe("");
    expect(ran.status).toBe(0);
  });

  const commands = withInfo("sh").flatMap(([place, { text }]) =>
    text
      .split("\n")
      .filter((line) => line !== "" && !line.startsWith("#"))
      .map((line) => [`${place} ${line}`, line, place] as const),
  );

  it.each(commands)("%s does what it says", (_name, line, place) => {
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
    const shown = findShown(place);
    if (shown !== undefined) expect(ran.stdout.replaceAll("\r\n", "\n")).toContain(shown);
  });
});

describe("names in documents", () => {
  it("lead to files that are there", () => {
    const missing = PAGES.flatMap((page) =>
      [...readFileSync(page, "utf8").matchAll(/\]\((?!https?:|#)([^)#]+)/g)]
        .map(([, path = ""]) => path)
        .filter((path) => !existsSync(join(dirname(page), path)))
        .map((path) => `${page}: ${path}`),
    );
    expect(missing).toEqual([]);
  });

  it("are there where they are named in running text", () => {
    const missing = PAGES.flatMap((page) =>
      [...readFileSync(page, "utf8").matchAll(/`((?:src|docs|tests|policies|examples|schemas)\/[\w./-]+)`/g)]
        .map(([, path = ""]) => path)
        .filter((path) => !existsSync(path))
        .map((path) => `${page}: ${path}`),
    );
    expect(missing).toEqual([]);
  });

  it("name only scripts and commands that exist", () => {
    const { scripts }: { scripts: Readonly<Record<string, string>> } = JSON.parse(readFileSync("package.json", "utf8"));
    const help = spawnSync(process.execPath, ["--import", "tsx", "src/cli/main.ts", "--help"], { encoding: "utf8" });
    const commands = [...help.stdout.matchAll(/^ {2}([a-z]+) /gm)].map(([, name]) => name);
    expect(commands).toContain("evaluate");
    const named = PAGES.flatMap((page) => {
      const text = readFileSync(page, "utf8");
      const runs = [...text.matchAll(/`npm (?:run )?([a-z:]+)`/g)].map(([, name = ""]) => `npm ${name}`);
      return [...runs, ...[...text.matchAll(/`tenbar ([a-z]+)/g)].map(([, name = ""]) => `tenbar ${name}`)];
    });
    const scripted = Object.keys(scripts).map((name) => `npm ${name}`);
    const known = ["npm pack", ...scripted, ...commands.map((name) => `tenbar ${name}`)];
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !known.includes(name))).toEqual([]);
  });

  it("name only codes that exist", () => {
    const sources = readdirSync("src", { recursive: true, encoding: "utf8" }).filter((file) => file.endsWith(".ts"));
    const code = sources.map((file) => readFileSync(join("src", file), "utf8")).join("\n");
    const kinds = [...STEP_KINDS, "check", "interval", "rule"].join("|");
    const judged = new RegExp(`^(${kinds})/(${REQUIREMENTS.join("|")})-(${OUTCOMES.join("|")})$`);
    const named = PAGES.flatMap((page) =>
      [...readFileSync(page, "utf8").matchAll(/`([a-z-]+\/[a-z]+(?:-[a-z]+)+)`/g)].map(([, name = ""]) => name),
    ).filter((name) => !existsSync(name));
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => !judged.test(name) && !code.includes(`"${name}"`))).toEqual([]);
  });

  it("README opens with the job and its two commands", () => {
    const [title, , ...rest] = readFileSync("README.md", "utf8").split("\n");
    expect(title).toBe("# tenbar");
    const head = rest.slice(0, 20).join("\n");
    expect(head).toContain("npm install && npm run demo");
    expect(head).toContain("npm install && npm test");
  });
});
