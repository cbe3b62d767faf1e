import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { DIAGNOSTICS, type DiagnosticCode } from "../../src/diagnostics/index.js";
import { compilePolicy, type Diagnostic, evaluate } from "../../src/index.js";
import { loadPolicy } from "../../src/node.js";
import { renderCodePage, summarizeCodePage } from "../../src/report/index.js";
import { CONSEQUENCES, REQUIREMENTS, STEP_KINDS, UNDECIDED_REASONS } from "../../src/terms/index.js";
import { renderCodeIndex } from "../../src/workshop/code-index.js";
import { listDiagnosticCodes, listFindingCodes, listRemarkCodes, listRequirements } from "./list-codes.js";
import { type CodePage, FOLDER, findExample, findSection, readCodePages } from "./read-code-page.js";

const PAGES = readCodePages();
const CODES = { diagnostics: listDiagnosticCodes(), findings: listFindingCodes(), remarks: listRemarkCodes() };
const select = (codes: readonly string[]) =>
  PAGES.filter(({ head }) => codes.includes(head.code ?? "")).map((page) => [page.head.code ?? "", page] as const);
const REASON_PAGES = PAGES.filter(({ file }) => file.startsWith("reasons/")).map(
  (page) => [page.head.code ?? "", page] as const,
);

/** Codes that nothing is known to give: a net under the shape check, and two reasons kept for what is not judged yet. */
const WITHOUT_EXAMPLES = ["read/wrong-shape", "finer-than-division", "explained-by-temperature"];
const hasExamples = ([code]: readonly [string, CodePage]) => !WITHOUT_EXAMPLES.includes(code);
const SHIPPED = { "common-practice/open-circuit": readFileSync("policies/common-practice/open-circuit.yaml", "utf8") };

/** The reasons that a page of something undecided lists. */
function listReasonsOf({ sections }: CodePage): readonly string[] {
  const body = sections.find(({ title }) => title === "Reasons")?.body ?? "";
  return [...body.matchAll(/^- `([a-z-]+)`: \S/gm)].map(([, reason = ""]) => reason);
}

describe("the pages of codes", () => {
  it("are there for every code and reason, and for nothing else", () => {
    const wanted = [...Object.values(CODES).flat(), ...UNDECIDED_REASONS.map((reason) => `reasons/${reason}`)];
    expect(PAGES.map(({ file }) => file).sort()).toEqual(wanted.map((code) => `${code}.md`).sort());
  });

  it("cover every kind and every requirement there is", () => {
    const requirements = listRequirements();
    expect(new Set(requirements.map(({ name }) => name))).toEqual(new Set(REQUIREMENTS));
    const kinds = new Set<string>([...STEP_KINDS, "check", "interval", "rule"]);
    expect(new Set(requirements.map(({ kind }) => kind))).toEqual(kinds);
  });

  it("cover what the cases of this project give", { timeout: 60_000 }, async () => {
    const known = [...CODES.findings, ...CODES.remarks];
    const strangers = new Set<string>();
    const reasons = new Map(PAGES.map((page) => [page.head.code ?? "", listReasonsOf(page)]));
    for (const name of readdirSync("tests/cases")) {
      const one: { policy: string; record: string } = JSON.parse(readFileSync(`tests/cases/${name}/case.json`, "utf8"));
      const { policy } = await loadPolicy(one.policy);
      if (policy === undefined) throw new Error(`${one.policy} does not compile`);
      for (const { code, reason, requirement } of evaluate(policy, JSON.parse(readFileSync(one.record, "utf8")))
        .findings) {
        if (!known.includes(code)) strangers.add(code);
        if (requirement !== undefined && reason !== undefined && reasons.get(code)?.includes(reason) !== true)
          strangers.add(`${code} for ${reason}`);
      }
    }
    expect([...strangers]).toEqual([]);
  });

  it.each(PAGES.map((page) => [page.file, page] as const))("%s has its head and its sections", (file, page) => {
    const { head, title, sections } = page;
    expect(file).toBe(`${file.startsWith("reasons/") ? "reasons/" : ""}${title}.md`);
    expect(head).toMatchObject({ code: title, since: "0.1.0" });
    const asks = sections.some((section) => section.title === "Policy");
    const gives = sections.some((section) => section.title === "Reasons");
    const between = [...(gives ? ["Reasons"] : []), ...(asks ? ["Policy"] : [])];
    expect(sections.map((section) => section.title)).toEqual(["Means", "Why", "Mend", ...between, "Bad", "Good"]);
    for (const { body } of sections) expect(body.length).toBeGreaterThan(10);
    expect(sections.map(({ body }) => body).join(" ")).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });

  it.each(PAGES.map((page) => [page.file, page] as const))(
    "%s opens with a sentence short enough for a list",
    (file) => {
      const text = readFileSync(`${FOLDER}/${file}`, "utf8");
      expect(summarizeCodePage(text)).toMatch(/^[A-Z`].{15,130}\.$/);
      expect(renderCodePage(text, { color: false, width: 80 })).toContain("Means\n  ");
    },
  );

  it.each(select(CODES.findings))(
    "%s lists reasons, in their order of precedence, where it is undecided",
    (code, page) => {
      const reasons = listReasonsOf(page);
      expect(reasons).toEqual(UNDECIDED_REASONS.filter((reason) => reasons.includes(reason)));
      expect(reasons.length > 0).toBe(code.endsWith("-undecided"));
    },
  );

  it("have no examples only where none is known", () => {
    const without = PAGES.filter(({ sections }) => sections.every(({ examples }) => examples.length === 0));
    expect(without.map(({ head }) => head.code).sort()).toEqual([...WITHOUT_EXAMPLES].sort());
  });

  it("are listed in the index as it would be generated", () => {
    expect(readFileSync(`${FOLDER}/README.md`, "utf8")).toBe(renderCodeIndex());
  });
});

/** Compiles an example; a file beside it is one whose first line says its name, `# brigade.yaml`. */
function compileExample(page: CodePage, title: "Bad" | "Good"): readonly Diagnostic[] {
  const parents: Record<string, string> = { ...SHIPPED };
  const texts: string[] = [];
  for (const { info, text } of findSection(page, title).examples) {
    expect(info).toBe(`yaml ${title.toLowerCase()}`);
    const name = /^# ([a-z]+\.yaml)\n/.exec(text)?.[1];
    if (name === undefined) texts.push(text);
    else parents[`./${name}`] = text;
  }
  const [text = ""] = texts;
  expect(texts).toHaveLength(1);
  return compilePolicy(text, {
    asOf: "2026-04-12",
    parents,
    findParent: (name) =>
      name === "./policy.yaml" ? { source: { file: "policy.yaml", text } } : { problem: "there is no such file" },
  }).diagnostics;
}

describe("a page of a diagnostic", () => {
  const pages = select(CODES.diagnostics);

  it.each(pages)("%s gives its severity", (code, { head }) => {
    const known: DiagnosticCode | undefined = CODES.diagnostics.includes(code) ? findCode(code) : undefined;
    expect(known && DIAGNOSTICS[known].severity).toBe(head.severity);
  });

  it.each(pages.filter(hasExamples))("%s: the bad example gives this code alone", (code, page) => {
    const codes = compileExample(page, "Bad").map((one) => one.code);
    expect(codes[0]).toBe(code);
    // Why: that there are more mistakes than are listed is only ever said before a list of them.
    if (code !== "read/more-mistakes") expect(new Set(codes)).toEqual(new Set([code]));
  });

  it.each(pages.filter(hasExamples))("%s: the good example gives none", (_code, page) => {
    expect(compileExample(page, "Good").map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });
});

function findCode(code: string): DiagnosticCode | undefined {
  return Object.keys(DIAGNOSTICS).find((one): one is DiagnosticCode => one === code);
}

/** Evaluates the bad or the good record of a page by its policy, which compiles without a word. */
function evaluateExample(page: CodePage, title: "Bad" | "Good") {
  expect(findSection(page, "Policy").examples.map(({ info }) => info)).toEqual(["yaml policy"]);
  expect(findSection(page, title).examples.map(({ info }) => info)).toEqual([`json ${title.toLowerCase()}`]);
  const { policy, diagnostics } = compilePolicy(findExample(page, "Policy"));
  expect(diagnostics).toEqual([]);
  if (policy === undefined) throw new Error(`the policy of ${page.file} does not compile`);
  const { code } = page.head;
  const options = { partial: code === "not-yet", digest: code === "record/no-digest" };
  return evaluate(policy, JSON.parse(findExample(page, title)), options);
}

describe("a page of a finding or a remark", () => {
  const pages = [...select(CODES.findings), ...select(CODES.remarks)];

  it.each(pages)("%s: the bad record gives it, and it weighs what the page says", (code, page) => {
    const found = evaluateExample(page, "Bad").findings.filter((one) => one.code === code);
    expect(found.length).toBeGreaterThan(0);
    const { consequence = "" } = page.head;
    const weighs = CONSEQUENCES.filter((word) => word === consequence);
    if (weighs.length === 0) expect(["as stated", "at least refer"]).toContain(consequence);
    else expect(found.map((one) => one.consequence)).toEqual(found.map(() => consequence));
  });

  it.each(pages)("%s: the good record gives no finding", (_code, page) => {
    expect(evaluateExample(page, "Good").findings.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });
});

describe("a page of a reason", () => {
  it.each(REASON_PAGES.filter(hasExamples))("%s: the bad record gives it, the good one none", (code, page) => {
    const listReasons = (title: "Bad" | "Good") => {
      const { results, findings } = evaluateExample(page, title);
      return [...results, ...findings].map(({ reason }) => reason).filter((reason) => reason !== undefined);
    };
    expect(listReasons("Bad")).toContain(code);
    expect(listReasons("Good")).toEqual([]);
  });
});
